// Starts a browser and answers each line of standard input by what is seen of it.
"use strict";
const readline = require("node:readline");
const puppeteer = require("puppeteer-core");

async function answer(look, more) {
    const browser = await puppeteer.launch({
        executablePath: process.env.CHROMIUM || "/usr/bin/chromium",
        args: ["--no-sandbox", "--disable-gpu", "--no-first-run", ...more],
    });
    const lines = readline.createInterface({ input: process.stdin });
    for await (const line of lines) {
        console.log(JSON.stringify(await look(browser, JSON.parse(line))));
    }
    await browser.close();
}

module.exports = (look, more = []) =>
    answer(look, more).catch((error) => {
        console.error(error);
        process.exit(1);
    });
