// The browser's own database held to the suite that every store passes.
import { serve } from "../harness.mjs";

export const tests = {
  async "the browser's disk keeps what every store promises"({ browser }) {
    const folder = process.env.TAUTLINE_APP_CONFORMANCE;
    if (!folder) throw new Error("TAUTLINE_APP_CONFORMANCE names no build with the suite");
    const server = await serve(folder);
    const context = await browser.newContext();
    try {
      const page = await context.newPage();
      const failed = new Promise((_, refused) => context.on("weberror", (error) => refused(error.error())));
      // whoever waits for it below hears of it; nobody else does
      failed.catch(() => {});
      await page.goto(new URL("#conformance", server.origin).href);
      const passed = page.waitForFunction(() => document.title === "conformance: passed", undefined, { timeout: 120_000 });
      await Promise.race([passed, failed]);
    } finally {
      await context.close();
      await server.stop();
    }
  },
};
