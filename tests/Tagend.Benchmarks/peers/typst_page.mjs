// typst_page.mjs MODULES SOURCE.typ FONTS OUT.pdf: compiles a page with typst.
import { createRequire } from "node:module";
import { writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";

const [modules, source, fonts, out] = process.argv.slice(2);
const { NodeCompiler } = createRequire(resolve(modules, "node_modules") + "/")("@myriaddreamin/typst-ts-node-compiler");
const compiler = NodeCompiler.create({ workspace: dirname(resolve(source)), fontArgs: [{ fontPaths: [fonts] }] });
writeFileSync(out, compiler.pdf({ mainFilePath: resolve(source) }));
