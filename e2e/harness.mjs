// What every test needs: the server, a browser, and pages that tell when something goes wrong on them.
import { spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createRequire } from "node:module";
import { chromium } from "playwright-core";

export const COMMAND = named("TAUTLINE");
export const APP = named("TAUTLINE_APP");
export const AXE = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

/** How many times slower the pages are made: what holds on a quick machine alone shows. */
const SLOWER = Number(process.env.TAUTLINE_SLOWER ?? 1);

/** Screens that the app is tried on. */
export const SIZES = {
  phone: { width: 390, height: 844 },
  tablet: { width: 820, height: 1180 },
  desktop: { width: 1440, height: 900 },
};

export const THEMES = ["light", "dark", "sunlight"];

function named(name) {
  const found = process.env[name];
  if (!found) throw new Error(`${name} names nothing: start the tests by ./test app`);
  return found;
}

export const folder = () => mkdtemp(join(tmpdir(), "tautline-e2e-"));

/** Runs the command to its end and gives what it printed. */
export const command = (...words) => commandIn(undefined, ...words);

/** The same within a folder. */
export function commandIn(cwd, ...words) {
  return new Promise((done, failed) => {
    const process = spawn(COMMAND, words, { cwd });
    let text = "";
    process.stdout.on("data", (some) => (text += some));
    process.on("error", failed);
    process.on("close", (status) => done({ status, text }));
  });
}

/** The server with a notebook of its own, or the one that is named; `stop` ends it. */
export async function serve(app = APP, notebook = undefined) {
  const own = await folder();
  const kept = notebook ?? join(own, "notebook.tautline");
  const process = spawn(COMMAND, ["serve", "--port", "0", "--app", app, "--notebook", kept]);
  const origin = await new Promise((done, failed) => {
    let text = "";
    const look = (some) => {
      text += some;
      const found = /http:\/\/[\w.:-]+/.exec(text);
      if (found) done(found[0]);
    };
    process.stdout.on("data", look);
    process.stderr.on("data", look);
    process.on("error", failed);
    process.on("close", () => failed(new Error(`the server ended: ${text}`)));
  });
  const ended = new Promise((done) => process.on("close", done));
  const stop = async () => {
    process.kill("SIGINT");
    await ended;
    await rm(own, { recursive: true, force: true });
  };
  return { origin, stop };
}

const FLAGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // a camera that is none: a moving pattern
  "--use-fake-device-for-media-stream",
];

export const browser = () =>
  chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: FLAGS });

/** A browser's window that has never seen the app. What goes wrong on its pages stands in `wrong`. */
export async function visitor(browser, origin, more = {}) {
  const context = await browser.newContext({ viewport: SIZES.phone, serviceWorkers: "allow", ...more });
  const wrong = [];
  context.on("weberror", (error) => wrong.push(String(error.error())));
  context.on("console", (message) => {
    // nobody answers, since the network is away: that is what is tried out
    const away = /ERR_INTERNET_DISCONNECTED|ERR_CONNECTION_REFUSED|ERR_FAILED/.test(message.text());
    if (message.type() === "error" && !away) wrong.push(message.text());
  });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  if (SLOWER > 1) await (await context.newCDPSession(page)).send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
  await page.goto(origin);
  await page.locator("html[data-opened]").waitFor({ state: "attached" });
  return { context, page, wrong };
}

/** The worker has everything that the app needs. */
export const offlineReady = (page) => page.locator('html[data-offline="ready"]').waitFor({ state: "attached" });

/** Takes the demo in, from the first screen. */
export async function openDemo(page) {
  await page.getByRole("button", { name: "Look at the demo" }).click();
  await page.getByRole("link", { name: /Hollow Flat \(invented\)/ }).first().waitFor();
}

/** Sets the theme on its screen, as a person would. */
export async function setTheme(page, theme) {
  await page.goto(new URL("#/notebook", page.url()).href);
  await page.getByRole("radio", { name: theme === "sunlight" ? "full sun" : theme, exact: true }).check();
  await page.locator(`html[data-theme="${theme}"]`).waitFor({ state: "attached" });
}

/** What axe finds wrong, as far as WCAG 2.2 AA goes. */
export async function axe(page) {
  // scripts of others are refused by the app's policy; the driver runs this one beside it
  const { readFile } = await import("node:fs/promises");
  await page.evaluate(await readFile(AXE, "utf8"));
  const found = await page.evaluate(async () => {
    // what stays while the page scrolls covers half of whatever happens to lie under its edge
    const fixed = [...document.querySelectorAll(".top, .bar, .said")];
    for (const one of fixed) one.style.position = "static";
    const rules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
    const found = await globalThis.axe.run(document, { runOnly: rules });
    for (const one of fixed) one.style.position = "";
    return found;
  });
  return found.violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.html).join(" | ")}`);
}

/** Every address of a screen once the demo is in. */
export const SCREENS = {
  sites: "#/",
  site: `#/site/${encodeURIComponent("Hollow Flat (invented)")}`,
  read: "#/read",
  "take in": "#/take-in",
  settle: "#/settle",
  notebook: "#/notebook",
  more: "#/more",
  handbook: "#/handbook",
  "handbook page": "#/handbook/interval",
  "follow-all": "#/follow",
  follow: `#/follow/${encodeURIComponent("Hollow Flat (invented)")}`,
  agree: "#/agree",
  "agree-log": "#/agree/log",
  "agree-sources": "#/agree/sources",
  history: "#/history",
  search: "#/search/hollow",
  lists: "#/lists",
  plants: "#/lists/plants",
  "new protocol": "#/lists/new",
};

export async function show(page, hash) {
  await page.goto(new URL(hash, page.url()).href);
  await page.locator("main :is(h1, h2, p):visible").first().waitFor();
  // a screen that works something out says so until it has
  await page.waitForFunction(() => !document.querySelector(".works")?.textContent);
}

/** Sets up a line as a person would, and begins it. */
export async function beginLine(page, { site = "Hollow Flat (invented)", line, length = "65 ft", unit = "inches", reader = "A. Reader", recorder = "" }) {
  await show(page, "#/read");
  const form = page.locator("#read-form");
  await form.getByLabel("Site", { exact: true }).fill(site);
  await form.getByLabel("Line", { exact: true }).fill(line);
  await form.getByLabel(/Length of the tape/).fill(length);
  await form.getByLabel(/Numbers on the tape/).selectOption({ label: unit });
  await form.getByLabel("Who reads the tape").fill(reader);
  await form.getByLabel("Who writes").fill(recorder);
  await form.getByRole("button", { name: "Begin at the zero stake" }).click();
  await page.locator(".reading").waitFor();
}

/** Touches the pad: digits, then the key that ends a number. */
export async function number(page, text) {
  for (const part of text.split(/(\d+\/\d+|\s)/).filter((part) => part.trim())) {
    if (part.includes("/")) await page.locator(".fractions button", { hasText: part }).click();
    else for (const digit of part) await page.locator(".numbers .digit").getByText(digit, { exact: true }).click();
  }
  await page.locator(".numbers .main").click();
}

/** One intercept by touch. */
export async function intercept(page, species, start, stop) {
  await page.locator(".ready").getByRole("button", { name: species, exact: true }).click();
  await number(page, start);
  await number(page, stop);
}

/** Closes the line after the last look. */
export async function closeLine(page) {
  await page.getByRole("button", { name: "Close …" }).click();
  await page.getByRole("button", { name: "Close the line" }).click();
  await page.getByRole("link", { name: "Next line" }).waitFor();
}

/** Everything pressed is on the disk. */
export const kept = (page) => page.locator(".kept:not(.waiting)").waitFor();

/** What stands in a store of this browser under every name. */
export const texts = (page, database) =>
  page.evaluate(
    (database) =>
      new Promise((done) => {
        const opened = indexedDB.open(database);
        opened.onsuccess = () => {
          const all = opened.result.transaction("texts").objectStore("texts").getAll();
          all.onsuccess = () => {
            opened.result.close();
            done(JSON.stringify(all.result));
          };
        };
      }),
    database,
  );

/** Waits until something holds, or says that it doesn't after a minute. */
export async function until(holds) {
  const begun = Date.now();
  while (!(await holds())) {
    if (Date.now() - begun > 60_000) throw new Error(`it never held: ${holds}`);
    await new Promise((done) => setTimeout(done, 100));
  }
}
