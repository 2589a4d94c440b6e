// Runs in a page with the player of QTI 3.0: ticks each choice of each item and leaves what the
// item scores and which feedback it shows.
function asPage(node) {
	if (node.nodeType === Node.TEXT_NODE) return document.createTextNode(node.data);
	if (node.nodeType !== Node.ELEMENT_NODE) return document.createComment("");
	const element = document.createElement(node.localName);
	for (const a of node.attributes) {
		if (!a.name.startsWith("xmlns")) element.setAttribute(a.name, a.value);
	}
	for (const child of node.childNodes) element.append(asPage(child));
	return element;
}

const settle = () => new Promise((done) => setTimeout(done, 20));
const played = {};
for (const [name, xml] of Object.entries(items)) {
	const item = asPage(new DOMParser().parseFromString(xml, "text/xml").documentElement);
	document.body.append(item);
	await item.updateComplete;
	await settle();
	played[name] = {};
	for (const choice of item.querySelectorAll("qti-simple-choice")) {
		item.resetResponses();
		choice.click();
		await settle();
		item.processResponse();
		await settle();
		played[name][choice.getAttribute("identifier")] = {
			score: item.getOutcome("SCORE").value,
			shown: [...item.querySelectorAll("qti-modal-feedback")]
				.filter((f) => f.showStatus === "on").map((f) => f.getAttribute("identifier")).join(),
		};
	}
	item.remove();
}
const out = document.createElement("pre");
out.id = "measured";
out.textContent = JSON.stringify(played);
document.body.append(out);
