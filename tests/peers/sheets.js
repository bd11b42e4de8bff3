// Opens pages of sheets in a browser and gives the text of their cells.
//
// Lines in: {"file"}; lines out: {"cells": [[text, ...], ...], "over": what is wider than its cell}.
"use strict";
const { pathToFileURL } = require("node:url");
const answerAll = require("./browser.js");

async function look(browser, asked) {
    const page = await browser.newPage();
    await page.setViewport({ width: 1400, height: 900 });
    await page.goto(pathToFileURL(asked.file).href, { waitUntil: "load" });
    const seen = await page.evaluate(() => {
        const rows = [...document.querySelectorAll("tbody tr")];
        const cells = rows.map((row) => [...row.cells].map((cell) => cell.textContent));
        const over = [...document.querySelectorAll("th, td")]
            .filter((cell) => cell.scrollWidth > cell.clientWidth)
            .map((cell) => cell.textContent)
            .slice(0, 5);
        return { cells, over };
    });
    await page.close();
    return seen;
}

answerAll(look, ["--allow-file-access-from-files"]);
