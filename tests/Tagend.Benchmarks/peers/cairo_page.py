# cairo_page.py LIST OUT.pdf: draws a list's pages with Cairo. Its fonts are found through FONTCONFIG_FILE.
import sys
import cairo

FAMILY = {"Regular": ("Inter", 0), "SemiBold": ("Inter SemiBold", 0), "Bold": ("Inter", 1)}
HANDLE = 1 - 0.5522848


def ink(c, text):
    c.set_source_rgb(*(int(text[i:i + 2], 16) / 255 for i in (1, 3, 5)))


def rounded(c, x, y, w, h, rx, ry):
    kx, ky, r, b = rx * HANDLE, ry * HANDLE, x + w, y + h
    c.move_to(x + rx, y)
    c.line_to(r - rx, y)
    c.curve_to(r - kx, y, r, y + ky, r, y + ry)
    c.line_to(r, b - ry)
    c.curve_to(r, b - ky, r - kx, b, r - rx, b)
    c.line_to(x + rx, b)
    c.curve_to(x + kx, b, x, b - ky, x, b - ry)
    c.line_to(x, y + ry)
    c.curve_to(x, y + ky, x + kx, y, x + rx, y)
    c.close_path()


def polygons(c, text):
    for polygon in text.split(";"):
        n = [float(v) for v in polygon.split(" ")]
        c.move_to(n[0], n[1])
        for i in range(2, len(n), 2):
            c.line_to(n[i], n[i + 1])
        c.close_path()


def paint(c, fill, width, color="#000000"):
    if fill != "-":
        ink(c, fill)
        c.fill_preserve()
    if width > 0:
        ink(c, color)
        c.set_line_width(width)
        c.stroke()
    c.new_path()


surface, c = None, None
for line in open(sys.argv[1], encoding="utf-8"):
    f = line.rstrip("\n").split("\t")
    kind = f[0]
    if kind == "page":
        size = float(f[1]), float(f[2])
        if surface is None:
            surface = cairo.PDFSurface(sys.argv[2], *size)
            c = cairo.Context(surface)
        else:
            c.show_page()
            surface.set_size(*size)
    elif kind == "text":
        family, bold = FAMILY[f[3]]
        c.select_font_face(family, cairo.FONT_SLANT_NORMAL, bold)
        c.set_font_size(float(f[4]))
        ink(c, f[5])
        x, y = float(f[1]), float(f[2])
        places = [float(p) for p in f[7].split(",")] if f[7] else [0.0]
        for place, piece in zip(places, f[8] if f[7] else [f[8]]):
            c.move_to(x + place, y)
            c.show_text(piece)
    elif kind == "line":
        dash = float(f[7])
        c.set_dash([dash] if dash else [])
        c.move_to(float(f[1]), float(f[2]))
        c.line_to(float(f[3]), float(f[4]))
        paint(c, "-", float(f[5]), f[6])
        c.set_dash([])
    elif kind == "box":
        x, y, w, h, r = (float(v) for v in f[1:6])
        rounded(c, x, y, w, h, r, r) if r else c.rectangle(x, y, w, h)
        paint(c, f[8], float(f[6]), f[7])
    elif kind == "oval":
        x, y, w, h = (float(v) for v in f[1:5])
        rounded(c, x, y, w, h, w / 2, h / 2)
        paint(c, f[6], float(f[5]))
    elif kind == "shape":
        polygons(c, f[3])
        paint(c, f[2], float(f[1]))
    elif kind == "bars":
        c.save()
        c.translate(float(f[1]), float(f[2]))
        c.scale(float(f[3]), float(f[3]))
        n = [int(v) for v in f[4].split(" ")]
        for i in range(0, len(n), 4):
            c.rectangle(*n[i:i + 4])
        c.restore()
        paint(c, "#000000", 0)
surface.finish()
