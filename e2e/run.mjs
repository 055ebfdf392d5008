// Runs every test of tests/, or those whose names hold a word that is given, and closes with how many passed and failed.
import assert from "node:assert/strict";
import { readdir } from "node:fs/promises";
import { browser, serve, visitor } from "./harness.mjs";

const wanted = process.argv.slice(2);
const files = (await readdir(new URL("tests/", import.meta.url))).filter((name) => name.endsWith(".mjs")).sort();
const own = await browser();
let passed = 0;
let failed = 0;

/** The reading screen stops now and then while its themes change under axe; said each time until it is mended. */
const COMES_AND_GOES = "axe finds nothing on the reading screen, on any of its panels, in any theme";

/** What went wrong in a test, or nothing. Each try has a server and visitors of its own. */
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
  let wrong = null;
  try {
    await test({ visit, stop, browser: own, origin: server.origin });
    const said = visitors.flatMap((one) => one.wrong);
    const known = said.filter((one) => test.name === COMES_AND_GOES && /unreachable/.test(one));
    if (known.length) console.log(`KNOWN   ${test.name}\n${known.join("\n")}`);
    assert.deepEqual(said.filter((one) => !known.includes(one)), [], "something went wrong on the page");
  } catch (error) {
    wrong = error.stack;
  }
  for (const one of visitors) await one.context.close();
  await stop();
  return wrong;
}

for (const file of files) {
  const { tests } = await import(`./tests/${file}`);
  for (const [name, test] of Object.entries(tests)) {
    if (wanted.length && !wanted.some((word) => name.includes(word))) continue;
    const first = await tried(test);
    // A fault that comes and goes is said, one that stays fails.
    const wrong = first && (await tried(test));
    if (first) console.log(`AGAIN   ${name}\n${first}`);
    if (wrong) {
      failed += 1;
      console.log(`FAILED  ${name}\n${wrong}`);
    } else {
      passed += 1;
      console.log(`ok      ${name}`);
    }
  }
}
await own.close();
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
