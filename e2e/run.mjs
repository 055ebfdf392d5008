// Runs every test of tests/, or those whose names hold a word that is given, and closes with how many passed and failed.
// A test that fails is tried once more by itself: on a busy machine a browser may be late. It is named at the end all
// the same, with what went wrong; where more than two were late, the run has failed.
import assert from "node:assert/strict";
import { readdir } from "node:fs/promises";
import { browser, serve, visitor } from "./harness.mjs";

const LATE_ALLOWED = 2;
const wanted = process.argv.slice(2);
const files = (await readdir(new URL("tests/", import.meta.url))).filter((name) => name.endsWith(".mjs")).sort();
const own = await browser();
const trouble = [];
let passed = 0;
let late = 0;
for (const file of files) {
  const { tests } = await import(`./tests/${file}`);
  for (const [name, test] of Object.entries(tests)) {
    if (wanted.length && !wanted.some((word) => name.includes(word))) continue;
    const first = await tried(test);
    const second = first && (await tried(test));
    const word = second ? "FAILED " : first ? "late   " : "ok     ";
    console.log(`${word} ${name}`);
    if (!second) passed += 1;
    if (first && !second) late += 1;
    if (first) trouble.push(`${word} ${name}\n${(second ?? first).stack}`);
  }
}
await own.close();
for (const one of trouble) console.log(one);
const failed = trouble.length - late;
if (late) console.log(`${late} passed at the second try only, of ${LATE_ALLOWED} that may`);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 || late > LATE_ALLOWED ? 1 : 0;

/** What went wrong in a test, with a server and visitors of its own; nothing where it passed. */
async function tried(test) {
  const server = await serve();
  let up = true;
  const stop = async () => {
    if (up) await server.stop();
    up = false;
  };
  const visitors = [];
  const visit = async (more) => {
    const one = await visitor(own, server.origin, more);
    visitors.push(one);
    return one;
  };
  try {
    await test({ visit, stop, browser: own, origin: server.origin });
    assert.deepEqual(visitors.flatMap((one) => one.wrong), [], "something went wrong on the page");
    return undefined;
  } catch (error) {
    return error;
  } finally {
    for (const one of visitors) await one.context.close();
    await stop();
  }
}
