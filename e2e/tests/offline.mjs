// Without a network: the server stopped and the browser cut off.
import { offlineReady, openDemo } from "../harness.mjs";

export const tests = {
  async "opened once, the app opens without a network and has what was kept"({ visit, stop }) {
    const { context, page } = await visit();
    await openDemo(page);
    await offlineReady(page);
    await stop();
    await context.setOffline(true);
    await page.reload();
    await page.locator("html[data-opened]").waitFor({ state: "attached" });
    await page.getByRole("link", { name: /Hollow Flat \(invented\)/ }).first().click();
    await page.getByText("Hollow Flat (invented)").first().waitFor();
  },

  async "the demo can be opened without a network"({ visit, stop }) {
    const { context, page } = await visit();
    await offlineReady(page);
    await stop();
    await context.setOffline(true);
    await page.reload();
    await page.locator("html[data-opened]").waitFor({ state: "attached" });
    await openDemo(page);
  },
};
