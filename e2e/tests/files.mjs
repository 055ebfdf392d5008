// Files taken in: what is wrong is shown with its place before anything is written, and good rows are kept.
import assert from "node:assert/strict";
import { SIZES, offlineReady, show } from "../harness.mjs";

const SHEET = `site,line,line length,species,start (decimal ft),stop (decimal ft)
Rim Draw (invented),1,100 ft,ATCA,12.0,14.5
Rim Draw (invented),1,100 ft,ATCA,20.0,2l.5
Rim Draw (invented),2,100 ft,KRLA,3.0,4.0
`;

export const tests = {
  async "a sheet with a slip says where it is before it is written, and its good rows are kept"({ visit }) {
    const { page } = await visit();
    await show(page, "#/take-in");
    const files = { name: "rim-draw.csv", mimeType: "text/csv", buffer: Buffer.from(SHEET) };
    await page.locator('input[type="file"]').setInputFiles(files);
    await page.getByText(/rim-draw\.csv:3/).waitFor();
    await page.getByText(/2l\.5/).first().waitFor();
    const kept = page.getByRole("button", { name: "Keep it" });
    await show(page, "#/");
    assert.equal(await page.getByText("Rim Draw").count(), 0, "nothing is written before a person says so");
    await show(page, "#/take-in");
    await page.locator('input[type="file"]').setInputFiles(files);
    await kept.click();
    await page.getByRole("link", { name: /Rim Draw \(invented\)/ }).waitFor();
    await page.reload();
    await page.getByRole("link", { name: /Rim Draw \(invented\)/ }).waitFor();
  },

  // written by openpyxl 3.1.5: a title over the headings, dates as a spreadsheet has them, fractions as text
  async "a spreadsheet is taken in without a network, and comes to what its rows add up to"({ visit }) {
    const { page, context } = await visit({ viewport: SIZES.desktop });
    await offlineReady(page);
    await context.setOffline(true);
    await show(page, "#/take-in");
    await page.locator('input[type="file"]').setInputFiles(new URL("../files/rim-draw.xlsx", import.meta.url).pathname);
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByRole("link", { name: /Rim Draw \(invented\)/ }).first().click();
    // line 1: 1 1/2 + 11 1/4 in of 780; line 2: 4 3/4
    const article = page.locator(".sheet article");
    await article.getByText("1.6 %").first().waitFor();
    await article.getByText("0.6 %").first().waitFor();
    await article.getByText("2026-06-09").first().waitFor();
  },

  async "what only the command reads is said"({ visit }) {
    const { page } = await visit();
    await show(page, "#/take-in");
    // the first bytes of every SQLite file (sqlite.org, Database File Format, 1.3)
    const files = { name: "bounds.gpkg", mimeType: "application/octet-stream", buffer: Buffer.from("SQLite format 3\0") };
    await page.locator('input[type="file"]').setInputFiles(files);
    await page.getByText(/bounds\.gpkg/).first().waitFor();
    assert.ok(await page.getByRole("button", { name: "Keep it" }).isDisabled());
  },
};
