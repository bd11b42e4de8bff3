// The words of every day of a language, as npm stopwords-iso lists them (MIT).
//
// In: {"lang": "fr"} a line. Out for each word: {"lang": "fr", "word": "..."}.
"use strict";

const { createInterface } = require("node:readline");
const lists = require("stopwords-iso");

createInterface({ input: process.stdin, crlfDelay: Infinity }).on("line", (line) => {
  const { lang } = JSON.parse(line);
  for (const word of lists[lang]) {
    process.stdout.write(`${JSON.stringify({ lang, word })}\n`);
  }
});
