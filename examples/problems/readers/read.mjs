// Reads a set as GIFT and QTI by readers of others and holds it against its JSON.
// usage: node read.mjs FOLDER
import fs from "node:fs";
import path from "node:path";
import * as cheerio from "cheerio";
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
		rows: (p.tables ?? []).reduce((n, t) => n + 1 + t.rows.length, 0),
		scores: 1,
	};
	same(`QTI 3.0 ${p.number}`, item(read(`qti30-${p.number}.xml`)), want);
	const converted = await convertQti2toQti3(read(`qti21-${p.number}.xml`));
	same(`QTI 2.1 ${p.number}`, item(converted), want);
}
console.log(`${set.problems.length} problems read as GIFT, QTI 2.1 and QTI 3.0`);
