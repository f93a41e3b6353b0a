// Opens a report in a real browser, uses it, and prints what was seen as JSON.
// Called as: node look_at.cjs PARTS CHROMIUM REPORT FOLDER. PARTS is a node_modules folder.
"use strict";
const fs = require("node:fs");
const path = require("node:path");
const { createRequire } = require("node:module");
const { pathToFileURL } = require("node:url");

const [parts, chromium, report, folder] = process.argv.slice(2);
const { chromium: driver } = createRequire(path.join(parts, "x"))("playwright-core");
const axe = fs.readFileSync(path.join(parts, "axe-core", "axe.min.js"), "utf8");
const WIDTHS = [320, 800, 1280];
const AUDITED = [320, 1280];

async function opened(context, seen) {
  const page = await context.newPage();
  page.on("console", (message) => seen.console.push(message.text()));
  page.on("pageerror", (error) => seen.console.push(String(error)));
  page.on("request", (request) => seen.requests.push(request.url()));
  await page.goto(pathToFileURL(report).href);
  return page;
}

const rules = (page, selector) =>
  page.locator(selector).evaluateAll((all) =>
    all.filter((one) => one.checkVisibility()).map((one) => `${one.dataset.rule} ${one.dataset.item}`));

async function layout(browser, seen) {
  for (const width of WIDTHS) {
    const context = await browser.newContext({ viewport: { width, height: 800 } });
    const page = await opened(context, seen);
    seen.widths[width] = await page.evaluate(() => document.documentElement.scrollWidth);
    await page.locator("details").evaluateAll((all) => all.forEach((one) => { one.open = true; }));
    seen.unfoldedWidths[width] = await page.evaluate(() => document.documentElement.scrollWidth);
    if (AUDITED.includes(width)) seen.accessible[width] = await audit(page);
    await context.close();
  }
}

async function audit(page) {
  await page.evaluate(axe);
  // Every rule is run on every part; only what is listed of a rule that holds is cut to one part.
  const { violations, passes } = await page.evaluate(
    () => globalThis.axe.run({ resultTypes: ["violations"] }));
  return {
    passes: passes.length,
    violations: violations.map((one) => `${one.impact} ${one.id}: ${one.nodes[0].html}`),
  };
}

// Everything that a reader does must work where scripts are switched off.
async function use(browser, seen) {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await opened(context, seen);
  const faults = ".fault";
  seen.whole = await rules(page, faults);
  await page.getByRole("list", { name: "By trade" }).getByRole("link", { name: "drain" }).click();
  seen.trade = await rules(page, faults);
  seen.tradeLine = await page.locator(".only:visible").allInnerTexts();
  seen.tradeSafety = await page.locator(".safety").isVisible();
  await page.getByRole("link", { name: "The whole sheet" }).click();
  seen.wholeAgain = await rules(page, faults);
  await page.getByRole("list", { name: "By stage" }).getByRole("link", { name: "coating" }).click();
  seen.stage = await rules(page, faults);
  await page.getByRole("link", { name: "The whole sheet" }).click();
  const unfolds = page.locator(".fault details").first();
  seen.folded = await unfolds.locator("dl").first().isVisible();
  await unfolds.locator("summary").click();
  seen.unfolded = await unfolds.locator("dl").first().isVisible();
  const note = page.locator(".legend a").last();
  const target = (await note.getAttribute("href")).slice(1);
  await note.click();
  seen.keynote = await page.locator(`[id="${target}"]`).evaluate((one) => {
    const box = one.getBoundingClientRect();
    return box.top >= -1 && box.top < innerHeight;
  });
  await page.keyboard.press("Tab");
  seen.focus = await page.evaluate(() => getComputedStyle(document.activeElement).outlineStyle);
  for (const format of ["Letter", "A4"]) {
    // That it lies is for the page to say: nobody sets it when printing.
    await page.pdf({ path: path.join(folder, `${format}.pdf`), format });
  }
  await context.close();
}

async function main() {
  // The page is our own; a container that runs as root has no sandbox to offer.
  const browser = await driver.launch({ executablePath: chromium, args: ["--no-sandbox"] });
  const seen = { console: [], requests: [], widths: {}, unfoldedWidths: {}, accessible: {} };
  try {
    await layout(browser, seen);
    await use(browser, seen);
  } finally {
    await browser.close();
  }
  process.stdout.write(JSON.stringify(seen));
}

main().catch((error) => {
  console.error(error);
  process.exit(1);
});
