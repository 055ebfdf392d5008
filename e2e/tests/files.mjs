// Files taken in: what is wrong is shown with its place before anything is written, and good rows are kept.
import assert from "node:assert/strict";
import { show } from "../harness.mjs";

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
};
