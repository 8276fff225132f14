// Pictures of every state for a person to look at: nothing compares them. One
// small screen each, of a width that a phone has, in few colours.
//
//   npm run shots                 all of them
//   npm run shots -- yard jobs    some

import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import zlib from 'node:zlib';

import { dist } from './made.mjs';
import { serve } from './serve.mjs';
import { states } from './states.mjs';
import { phone, size } from './touch.mjs';

const out = fileURLToPath(new URL('shots/', import.meta.url));
const wanted = process.argv.slice(2);
fs.mkdirSync(out, { recursive: true });
const server = await serve(dist());
const hand = await phone(server);
try {
  for (const [name, go] of Object.entries(states)) {
    if (wanted.length > 0 && !wanted.includes(name)) continue;
    await take(name, go);
    if (['job', 'yard', 'ground'].includes(name)) await take(`${name}-dark`, go, 'dark');
  }
} finally {
  await hand.close();
  await server.stop();
}
process.exit(0);

async function take(name, go, scheme = 'light') {
  await hand.page.emulateMediaType(null);
  await hand.page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }, { name: 'prefers-reduced-motion', value: 'reduce' }]);
  await hand.page.setViewport(size);
  await hand.forget();
  await hand.open('/');
  await hand.until(() => document.querySelector('[data-test="start-sample"]'), 'the start');
  await go(hand);
  await hand.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 300))));
  const shot = await hand.page.screenshot({ type: 'png', captureBeyondViewport: false });
  const bytes = encode(await smaller(shot));
  fs.writeFileSync(path.join(out, `${name}.png`), bytes);
  console.log(`${name}.png ${bytes.length} bytes`);
}

// smaller redraws a picture at one dot for a pixel of the page.
async function smaller(png) {
  const text = await hand.page.browser().newPage().then(async (page) => {
    try {
      return await page.evaluate(async (data, { width, height }) => {
        const bitmap = await createImageBitmap(await (await fetch('data:image/png;base64,' + data)).blob());
        const canvas = new OffscreenCanvas(width, height);
        const context = canvas.getContext('2d');
        context.imageSmoothingQuality = 'high';
        context.drawImage(bitmap, 0, 0, width, height);
        const { data: rgba } = context.getImageData(0, 0, width, height);
        let all = '';
        for (let i = 0; i < rgba.length; i += 8192) all += String.fromCharCode(...rgba.subarray(i, i + 8192));
        return btoa(all);
      }, Buffer.from(png).toString('base64'), size);
    } finally {
      await page.close();
    }
  });
  return { ...size, rgba: Buffer.from(text, 'base64') };
}

// encode writes a PNG of at most 256 colours: those that there are the most of,
// and for the rest the nearest of these.
function encode({ width, height, rgba }) {
  const counts = new Map();
  const key = (i) => (rgba[i] & 0xf8) << 16 | (rgba[i + 1] & 0xf8) << 8 | (rgba[i + 2] & 0xf8);
  for (let i = 0; i < rgba.length; i += 4) counts.set(key(i), (counts.get(key(i)) ?? 0) + 1);
  const palette = [...counts].sort((a, b) => b[1] - a[1]).slice(0, 64).map(([color]) => color);
  const nearest = new Map();
  const index = (color) => {
    if (!nearest.has(color)) {
      let best = 0, least = Infinity;
      palette.forEach((other, i) => {
        const d = [16, 8, 0].reduce((sum, shift) => sum + ((color >> shift & 255) - (other >> shift & 255)) ** 2, 0);
        if (d < least) [best, least] = [i, d];
      });
      nearest.set(color, best);
    }
    return nearest.get(color);
  };
  const raw = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) raw[y * (width + 1) + 1 + x] = index(key((y * width + x) * 4));
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 3, 0, 0, 0], 8); // eight bits, by palette
  return Buffer.concat([
    Buffer.from('89504e470d0a1a0a', 'hex'),
    chunk('IHDR', head),
    chunk('PLTE', Buffer.from(palette.flatMap((color) => [color >> 16 & 255, color >> 8 & 255, color & 255]))),
    chunk('IDAT', zlib.deflateSync(raw, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(name, data) {
  const body = Buffer.concat([Buffer.from(name), data]);
  const out = Buffer.alloc(8 + body.length);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc(body), 4 + body.length);
  return out;
}

function crc(bytes) {
  let c = 0xffffffff;
  for (const byte of bytes) {
    c ^= byte;
    for (let k = 0; k < 8; k++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  }
  return (c ^ 0xffffffff) >>> 0;
}
