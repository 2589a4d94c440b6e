// Reads a set as GIFT, Aiken, Moodle XML, CSV and QTI by readers of others, holds it against its JSON
// and leaves the items of QTI 2.1 as 3.0.
// usage: node read.mjs FOLDER
import fs from "node:fs";
import path from "node:path";
import aiken from "aiken-to-moodlexml";
import * as cheerio from "cheerio";
import { parse } from "csv-parse/sync";
import { XMLParser, XMLValidator } from "fast-xml-parser";
import * as gift from "gift-pegjs";
import { convertQti2toQti3 } from "@citolab/qti-convert/qti-convert-node";

const folder = process.argv[2];
const read = (name) => fs.readFileSync(path.join(folder, name), "utf8");
const set = JSON.parse(read("set.json"));
const html = (text) =>
	text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;")
		.replace(/"/g, "&#34;").replace(/'/g, "&#39;");

function same(what, got, want) {
	const [g, w] = [JSON.stringify(got), JSON.stringify(want)];
	if (g !== w) throw new Error(`${what}: ${g}, want ${w}`);
}

const questions = gift.parse(read("set.gift")).filter((q) => q.type !== "Category");
same("questions of GIFT", questions.length, set.problems.length);
questions.forEach((q, i) => {
	const p = set.problems[i];
	same(`GIFT ${i + 1}`, q.choices.map((c) => [c.isCorrect, c.text.text, c.feedback.text]),
		p.choices.map((c) => [c.right, html(c.text), html(c.feedback)]));
});

const plain = (text) => text.replace(/\s+/g, " ").trim();
const rows = (p) => (p.tables ?? []).reduce((n, t) => n + 1 + t.rows.length, 0);

const multichoice = (xml) => new XMLParser({
	ignoreAttributes: false, parseTagValue: false,
	isArray: (name) => name === "question" || name === "answer",
}).parse(xml).quiz.question.filter((q) => q["@_type"] === "multichoice");

// The reader of Aiken leaves what it has read as Moodle XML.
aiken(read("set.aiken"), (xml, failed) => {
	if (failed) throw new Error(`Aiken: ${failed}`);
	const quiz = multichoice(xml);
	same("questions of Aiken", quiz.length, set.problems.length);
	quiz.forEach((q, i) => {
		const p = set.problems[i];
		same(`Aiken ${i + 1} asks`, plain(q.questiontext.text).includes(plain(p.ask)), true);
		same(`Aiken ${i + 1}`, q.answer.map((a) => [a["@_fraction"], a.text]),
			p.choices.map((c) => [c.right ? "100" : "0", c.text]));
	});
});

const moodle = read("set.moodle.xml");
same("Moodle XML", XMLValidator.validate(moodle), true);
const quiz = multichoice(moodle);
same("questions of Moodle XML", quiz.length, set.problems.length);
quiz.forEach((q, i) => {
	const p = set.problems[i];
	const asked = cheerio.load(q.questiontext.text);
	same(`Moodle XML ${i + 1}`, [asked("tr").length, asked("body > p:last-child").text()],
		[rows(p), p.ask]);
	same(`Moodle XML ${i + 1}`, q.answer.map((a) => [
		a["@_fraction"], cheerio.load(a.text).text(), cheerio.load(a.feedback.text).text(),
	]), p.choices.map((c) => [c.right ? "100" : "0", c.text, c.feedback]));
});

const table = parse(read("set.csv"), { columns: true, relax_column_count: false });
same("lines of CSV", table.length, set.problems.length);
table.forEach((line, i) => {
	const p = set.problems[i];
	same(`CSV ${i + 1}`, [line.number, line.letter, ...["A", "B", "C", "D"].flatMap(
		(l) => [line[l], line[`feedback ${l}`]])],
	[String(p.number), p.answer.letter, ...p.choices.flatMap((c) => [c.text, c.feedback])]);
});

function item(xml) {
	const $ = cheerio.load(xml, { xml: true });
	const feedback = {};
	$("qti-modal-feedback").each((_, f) => {
		feedback[$(f).attr("identifier")] = plain($(f).text());
	});
	return {
		right: plain($("qti-correct-response qti-value").text()),
		choices: $("qti-simple-choice").toArray().map((c) => ({
			letter: $(c).attr("identifier"), text: plain($(c).text()),
			feedback: feedback[$(c).attr("identifier")],
		})),
		rows: $("qti-item-body tr").length,
		scores: $("qti-response-processing").length,
	};
}

for (const p of set.problems) {
	const want = {
		right: p.answer.letter,
		choices: p.choices.map((c) => ({
			letter: c.letter, text: plain(c.text), feedback: plain(c.feedback),
		})),
		rows: rows(p),
		scores: 1,
	};
	same(`QTI 3.0 ${p.number}`, item(read(`qti30-${p.number}.xml`)), want);
	const converted = await convertQti2toQti3(read(`qti21-${p.number}.xml`));
	same(`QTI 2.1 ${p.number}`, item(converted), want);
	fs.writeFileSync(path.join(folder, `converted-${p.number}.xml`), converted);
}
console.log(`${set.problems.length} problems read as GIFT, Aiken, Moodle XML, CSV, QTI 2.1 and QTI 3.0`);
