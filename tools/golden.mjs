// Prints the engine's golden table as a WebAssembly module works it out: node tools/golden.mjs MODULE
// The module gets no imports, so nothing of the host's mathematics can reach it.

import { readFile } from "node:fs/promises";

const { instance } = await WebAssembly.instantiate(await readFile(process.argv[2]), {});
const { memory, table_start, table_length } = instance.exports;
const start = table_start() >>> 0;
const length = table_length() >>> 0;
process.stdout.write(new Uint8Array(memory.buffer, start, length));
