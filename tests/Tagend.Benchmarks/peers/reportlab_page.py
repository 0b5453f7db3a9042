# reportlab_page.py LIST FONTS OUT.pdf: draws a list's pages with ReportLab.
import sys
from reportlab.lib.colors import HexColor
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen import canvas

c = canvas.Canvas(sys.argv[3], pageCompression=1)
height = 0.0
fonts = set()
started = False


def polygons(text):
    path = c.beginPath()
    for polygon in text.split(";"):
        n = [float(v) for v in polygon.split(" ")]
        path.moveTo(n[0], height - n[1])
        for i in range(2, len(n), 2):
            path.lineTo(n[i], height - n[i + 1])
        path.close()
    return path


def paint(fill, width, color="#000000"):
    if fill != "-":
        c.setFillColor(HexColor(fill))
    if width > 0:
        c.setStrokeColor(HexColor(color))
        c.setLineWidth(width)
    return {"fill": int(fill != "-"), "stroke": int(width > 0)}


for line in open(sys.argv[1], encoding="utf-8"):
    f = line.rstrip("\n").split("\t")
    kind = f[0]
    if kind == "page":
        if started:
            c.showPage()
        started = True
        height = float(f[2])
        c.setPageSize((float(f[1]), height))
    elif kind == "text":
        if f[3] not in fonts:
            fonts.add(f[3])
            pdfmetrics.registerFont(TTFont(f[3], f"{sys.argv[2]}/Inter-{f[3]}.ttf"))
        c.setFont(f[3], float(f[4]))
        c.setFillColor(HexColor(f[5]))
        c.drawString(float(f[1]), height - float(f[2]), f[8], charSpace=float(f[6]))
    elif kind == "line":
        dash = float(f[7])
        c.setDash([dash, dash] if dash else [])
        paint("-", float(f[5]), f[6])
        c.line(float(f[1]), height - float(f[2]), float(f[3]), height - float(f[4]))
        c.setDash([])
    elif kind == "box":
        x, y, w, h, r = (float(v) for v in f[1:6])
        how = paint(f[8], float(f[6]), f[7])
        c.roundRect(x, height - y - h, w, h, r, **how) if r else c.rect(x, height - y - h, w, h, **how)
    elif kind == "oval":
        x, y, w, h = (float(v) for v in f[1:5])
        c.ellipse(x, height - y - h, x + w, height - y, **paint(f[6], float(f[5])))
    elif kind == "shape":
        c.drawPath(polygons(f[3]), **paint(f[2], float(f[1])))
    elif kind == "bars":
        x, y, unit = (float(v) for v in f[1:4])
        n = [unit * int(v) for v in f[4].split(" ")]
        path = c.beginPath()
        for i in range(0, len(n), 4):
            path.rect(x + n[i], height - y - n[i + 1] - n[i + 3], n[i + 2], n[i + 3])
        c.drawPath(path, fillMode=1, **paint("#000000", 0))
c.save()
