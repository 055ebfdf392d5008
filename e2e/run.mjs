// Runs every test of tests/, or those whose names hold a word that is given, and closes with how many passed and failed.
import assert from "node:assert/strict";
import { readdir } from "node:fs/promises";
import { browser, serve, visitor } from "./harness.mjs";

const wanted = process.argv.slice(2);
const files = (await readdir(new URL("tests/", import.meta.url))).filter((name) => name.endsWith(".mjs")).sort();
const own = await browser();
let passed = 0;
let failed = 0;
for (const file of files) {
  const { tests } = await import(`./tests/${file}`);
  for (const [name, test] of Object.entries(tests)) {
    if (wanted.length && !wanted.some((word) => name.includes(word))) continue;
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
      passed += 1;
      console.log(`ok      ${name}`);
    } catch (error) {
      failed += 1;
      console.log(`FAILED  ${name}\n${error.stack}`);
    }
    for (const one of visitors) await one.context.close();
    await stop();
  }
}
await own.close();
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
