// How npm split-sms cuts texts into messages (3GPP TS 23.040, 9.2.3.24.1).
//
// In: {"text": "..."} a line. Out for each: {"set": "GSM" or "Unicode", "parts": ["...", ...]}.
"use strict";

const { createInterface } = require("node:readline");
const { split } = require("split-sms");

createInterface({ input: process.stdin, crlfDelay: Infinity }).on("line", (line) => {
  const { characterSet, parts } = split(JSON.parse(line).text);
  const answer = { set: characterSet, parts: parts.map((part) => part.content) };
  process.stdout.write(`${JSON.stringify(answer)}\n`);
});
