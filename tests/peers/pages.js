// Opens pages in a browser, looks at each with axe-core by WCAG 2.2 AA, and takes its picture.
//
// Lines in: {"url", "cookie": {"name", "value"}, "picture"}; lines out: what axe-core says is wrong,
// the words of the first table, and what was fetched from elsewhere.
"use strict";
const fs = require("node:fs");
const answerAll = require("./browser.js");
const axe = fs.readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

async function look(browser, asked) {
    const page = await browser.newPage();
    await page.setViewport({ width: 1024, height: 768 });
    const elsewhere = [];
    page.on("request", (request) => {
        const url = request.url();
        if (!url.startsWith(new URL(asked.url).origin)) elsewhere.push(url);
    });
    const refused = [];
    page.on("console", (message) => {
        if (message.type() === "error") refused.push(message.text());
    });
    if (asked.cookie) {
        await page.setCookie({ ...asked.cookie, url: asked.url, httpOnly: true });
    }
    const answer = await page.goto(asked.url, { waitUntil: "load" });
    const cells = await page.$$eval("table", (tables) =>
        tables.map((table) =>
            [...table.rows].map((row) => [...row.cells].map((cell) => cell.textContent.trim())),
        ),
    );
    if (asked.picture) await page.screenshot({ path: asked.picture, fullPage: true });
    // The policy of the page keeps scripts out; the look from outside is let in beside it.
    await page.setBypassCSP(true);
    await page.reload({ waitUntil: "load" });
    await page.evaluate(axe);
    const found = await page.evaluate(
        (tags) => axe.run(document, { runOnly: { type: "tag", values: tags } }),
        TAGS,
    );
    const violations = found.violations.map((one) => ({
        id: one.id,
        nodes: one.nodes.map((node) => node.html).slice(0, 3),
    }));
    const passes = found.passes.length;
    await page.close();
    return { status: answer.status(), violations, passes, cells, elsewhere, refused };
}

answerAll(look);
