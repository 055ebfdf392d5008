// How fast the app is on a slow phone and a weak signal: CPU four times slower, 1.6 Mbit/s, 150 ms there and back. Prints what
// it measured; a measurement is of the machine that it ran on, so nothing passes or fails by it.
//
//   node e2e/speed.mjs [sites lines]     2000 and 10 where nothing is said
import { mkdtemp, readdir, rm, stat, writeFile } from "node:fs/promises";
import { availableParallelism, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { APP, SIZES, beginLine, browser, command, kept, offlineReady, openDemo, serve, show } from "./harness.mjs";
import { GOALS, PLANTS, readings } from "./readings.mjs";

const SLOWER = 4;
const NETWORK = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 750e3 / 8 };

const [sites, lines] = [Number(process.argv[2] ?? 2000), Number(process.argv[3] ?? 10)];
const own = await browser();
const said = (what, figure) => console.log(`${what.padEnd(64)} ${figure}`);
const ms = (time) => `${Math.round(time)} ms`;

/** A page of a new window under the throttles; `loose` takes them off. */
async function slow(context) {
  const page = await context.newPage();
  page.setDefaultTimeout(600_000);
  const devtools = await context.newCDPSession(page);
  const throttle = async (cpu, network) => {
    await devtools.send("Emulation.setCPUThrottlingRate", { rate: cpu });
    await devtools.send("Network.enable");
    await devtools.send("Network.emulateNetworkConditions", network);
  };
  await throttle(SLOWER, NETWORK);
  return { page, tighten: () => throttle(SLOWER, NETWORK), loose: () => throttle(1, { offline: false, latency: 0, downloadThroughput: -1, uploadThroughput: -1 }) };
}

/** From the start of a navigation until something can be touched, by the page's own clock. */
async function until(page, go, selector) {
  await page.addInitScript((selector) => {
    const look = () => {
      if (document.querySelector(selector)) requestAnimationFrame(() => (globalThis.there = performance.now()));
      else setTimeout(look, 5);
    };
    look();
  }, selector);
  await go();
  await page.waitForFunction(() => globalThis.there !== undefined);
  return page.evaluate(() => globalThis.there);
}

/** The longest that the page did not answer since it was asked last. */
const longest = (page) => page.evaluate(() => globalThis.blocked?.splice(0).reduce((most, one) => Math.max(most, one), 0) ?? 0);

const watch = (page) =>
  page.addInitScript(() => {
    globalThis.blocked = [];
    new PerformanceObserver((list) => globalThis.blocked.push(...list.getEntries().map((one) => one.duration))).observe({ type: "longtask", buffered: true });
  });

const weight = async (folder) => {
  const names = await readdir(folder);
  const packed = await Promise.all(names.filter((name) => !name.endsWith(".br")).map(async (name) => (await stat(join(folder, names.includes(`${name}.br`) ? `${name}.br` : name))).size));
  return packed.reduce((sum, one) => sum + one, 0);
};

said("processors, load of the machine", `${availableParallelism()}, ${loadavg()[0].toFixed(1)}`);
said("the folder, packed where it is", `${Math.round((await weight(APP)) / 1000)} kB`);

{
  const server = await serve();
  const context = await own.newContext({ viewport: SIZES.phone, hasTouch: true });
  const { page, loose, tighten } = await slow(context);
  said("first visit: until the first button can be touched", ms(await until(page, () => page.goto(server.origin), "main button")));
  await offlineReady(page);
  said("again, from this device: until the first button can be touched", ms(await until(page, () => page.reload(), "main button")));
  await loose();
  await openDemo(page);
  await beginLine(page, { line: "91" });
  await tighten();
  // from the touch to the picture that shows what it did, by the browser's own count (Event Timing; in steps of 8 ms)
  await page.evaluate(() => {
    globalThis.answers = [];
    new PerformanceObserver((list) => {
      const own = list.getEntries().filter((one) => one.name === "click");
      globalThis.answers.push(...own.map((one) => one.duration));
    }).observe({ type: "event", durationThreshold: 16, buffered: false });
  });
  const touch = (selector) => page.locator(selector).first().click();
  let touches = 0;
  for (let row = 0; row < 12; row += 1) {
    await touch(".ready button");
    for (const digit of `${30 * row + 110}`) await page.locator(".numbers .digit").getByText(digit, { exact: true }).click();
    await touch(".numbers .main");
    for (const digit of `${30 * row + 125}`) await page.locator(".numbers .digit").getByText(digit, { exact: true }).click();
    await touch(".numbers .main");
    touches += 9;
  }
  await kept(page);
  await page.waitForTimeout(500);
  const answers = (await page.evaluate(() => globalThis.answers)).sort((a, b) => a - b);
  // what took less than 16 ms isn't reported
  const all = [...Array(Math.max(0, touches - answers.length)).fill(16), ...answers];
  const at = (share) => all[Math.min(all.length - 1, Math.floor(share * all.length))];
  said(`a key answers, ${touches} touches: half, 19 of 20, the slowest`, `${ms(at(0.5))}, ${ms(at(0.95))}, ${ms(all.at(-1))}`);
  await context.close();
  await server.stop();
}

{
  const server = await serve();
  const context = await own.newContext({ viewport: SIZES.phone, hasTouch: true });
  const { page, loose, tighten } = await slow(context);
  await loose();
  await watch(page);
  await page.goto(server.origin);
  await openDemo(page);
  await show(page, "#/plan/lines");
  await page.getByLabel("as I describe it").check();
  await page.getByLabel(/^Spread of lines/).fill("7");
  await page.locator("summary", { hasText: "Change and trend" }).click();
  await page.getByLabel(/^A change between two visits/).fill("3");
  await page.getByLabel(/^How alike/).fill("0.5");
  await page.getByLabel(/^Draw 10.000 surveys/).check();
  const slider = page.getByLabel(/^An interval that reaches/);
  await slider.fill("2");
  await page.getByRole("button", { name: /^Take \d+ lines: interval/ }).waitFor();
  await page.evaluate(() => {
    globalThis.answers = [];
    const own = (list) => list.getEntries().filter((one) => one.name === "keydown").map((one) => one.duration);
    new PerformanceObserver((list) => globalThis.answers.push(...own(list))).observe({ type: "event", durationThreshold: 16, buffered: false });
  });
  const moved = async (what) => {
    await page.waitForTimeout(3000);
    await longest(page);
    await page.evaluate(() => globalThis.answers.splice(0));
    await slider.focus();
    for (let step = 0; step < 20; step += 1) {
      await page.keyboard.press(step % 2 ? "ArrowLeft" : "ArrowRight");
      await page.waitForTimeout(120);
    }
    const answers = (await page.evaluate(() => globalThis.answers)).sort((a, b) => a - b);
    said(`a slider of the plan answers${what}, 20 steps: half, the slowest`, `${ms(answers[answers.length >> 1] ?? 16)}, ${ms(answers.at(-1) ?? 16)}`);
    const begun = performance.now();
    await page.waitForFunction(() => document.querySelector(".under-way").textContent !== "");
    await page.waitForFunction(() => document.querySelector(".under-way").textContent === "");
    said(`until all surveys are drawn after the last step${what}`, ms(performance.now() - begun));
    said(`the longest that it did not answer meanwhile${what}`, ms(await longest(page)));
  };
  await moved(" (no throttle)");
  await tighten();
  await moved("");
  await context.close();
  await server.stop();
}

{
  const at = await mkdtemp(join(tmpdir(), "tautline-speed-"));
  const files = [...readings({ sites, lines, most: 6, seed: 7 }), PLANTS, GOALS];
  for (const file of files) await writeFile(join(at, file.name), file.text);
  const notebook = join(at, "notebook.tautline");
  await command("import", ...files.map((file) => join(at, file.name)), "--notebook", notebook);
  const server = await serve(APP, notebook);
  const context = await own.newContext({ viewport: SIZES.phone, hasTouch: true });
  const { page, loose, tighten } = await slow(context);
  await loose();
  await watch(page);
  const begun = performance.now();
  await page.goto(server.origin);
  await page.locator(".sites li").first().waitFor();
  said(`${sites} sites, ${sites * lines} visits: until a new device has them (no throttle)`, ms(performance.now() - begun));
  await page.locator(".badge.sync-sent").waitFor();
  await offlineReady(page);
  await page.waitForTimeout(3000);
  said("the longest that it did not answer meanwhile (no throttle)", ms(await longest(page)));
  await tighten();
  said("opened again: until all sites are shown", ms(await until(page, () => page.reload(), ".sites li")));
  await page.locator("html[data-read]").waitFor({ state: "attached" });
  said("until the whole notebook is at hand", ms(await page.evaluate(() => performance.now())));
  await page.waitForTimeout(2000);
  said("the longest that it did not answer meanwhile", ms(await longest(page)));
  const first = page.locator(".sites li a").first();
  const site = performance.now();
  await first.click();
  await page.locator(".sheet").waitFor();
  said("a site is opened", ms(performance.now() - site));
  await loose();
  await beginLine(page, { site: "Invented 0001", line: "91", length: "600 in" });
  await tighten();
  await longest(page);
  await page.locator(".ready button").first().click();
  for (const digit of "123") await page.locator(".numbers .digit").getByText(digit, { exact: true }).click();
  await kept(page);
  said("a line is read meanwhile: the longest that it did not answer", ms(await longest(page)));
  await context.close();
  await server.stop();
  await rm(at, { recursive: true, force: true });
}
await own.close();
