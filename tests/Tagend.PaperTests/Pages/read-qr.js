// Says what jsQR reads in each PNG, a line each: "null" or the text as JSON. NODE_PATH names where jsqr and pngjs are.
const { readFileSync } = require("fs");
const { PNG } = require("pngjs");
const read = require("jsqr");

for (const file of process.argv.slice(2)) {
    const picture = PNG.sync.read(readFileSync(file));
    const code = read(new Uint8ClampedArray(picture.data), picture.width, picture.height, { inversionAttempts: "dontInvert" });
    console.log(JSON.stringify(code && code.data));
}
