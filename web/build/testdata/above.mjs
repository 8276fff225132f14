// Asks the built worker where the program's memory is past 2 GB, of which the
// program gives addresses as negative numbers; prints the answer:
//   node above.mjs DIST
import {startWorker} from './worker.mjs';

const place = 2 ** 31 + 4096;
const mem = {buffer: new ArrayBuffer(place + 4096)}; // no more of it is used than is written
const bytes = (at, size) => new Uint8Array(mem.buffer, at, size);
WebAssembly.instantiate = async () => ({instance: {exports: {
  mem,
  room: (text, size) => (place + 1024 * text) | 0,
  ask: () => {
    bytes(place + 3072, 8).set(bytes(place, 4)); // the verb
    bytes(place + 3076, 4).set(bytes(place + 1024, 4)); // the document
    return 8;
  },
  answer: () => (place + 3072) | 0,
}}});
process.on('unhandledRejection', () => {}); // the loader, of what is no program

const ask = await startWorker(process.argv[2]);
console.log(new TextDecoder().decode(await ask('verb', new TextEncoder().encode('text'))));
process.exit(0);
