// Reads pictures with decoders from npm. One line a picture: name, milliseconds, texts as a JSON list, between tabs.
// node decoders.mjs zxing-wasm|jsqr MODULES-FOLDER PICTURE...
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';

const [, , decoder, folder, ...pictures] = process.argv;
const require = createRequire(pathToFileURL(join(folder, 'x.js')));
const jpeg = require('jpeg-js');
const { PNG } = require('pngjs');

function pixels(path) {
  const bytes = readFileSync(path);
  if (bytes[0] === 0x89) return PNG.sync.read(bytes);
  return jpeg.decode(bytes, { useTArray: true, maxMemoryUsageInMB: 2048 });
}

async function reader() {
  if (decoder === 'jsqr') {
    const jsQR = require('jsqr');
    return async ({ data, width, height }) => {
      const found = jsQR(new Uint8ClampedArray(data), width, height, { inversionAttempts: 'attemptBoth' });
      return found ? [found.data] : [];
    };
  }
  const { readBarcodes, prepareZXingModule } = require('zxing-wasm/reader');
  const wasm = readFileSync(require.resolve('zxing-wasm/reader/zxing_reader.wasm'));
  prepareZXingModule({ overrides: { wasmBinary: wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) } });
  const options = { formats: ['QRCode'], tryHarder: true, tryRotate: true, tryInvert: true, tryDownscale: true, maxNumberOfSymbols: 255 };
  return async ({ data, width, height }) =>
    (await readBarcodes({ data: new Uint8ClampedArray(data), width, height, colorSpace: 'srgb' }, options)).filter((c) => c.isValid).map((c) => c.text);
}

function milliseconds(start) {
  const { user, system } = process.cpuUsage(start);
  return ((user + system) / 1000).toFixed(1);
}

const read = await reader();
for (const picture of pictures) {
  const image = pixels(picture);
  const start = process.cpuUsage();
  let texts = [];
  try { texts = await read(image); } catch { /* a decoder that gives up has read nothing */ }
  console.log([basename(picture), milliseconds(start), JSON.stringify(texts)].join('\t'));
}
