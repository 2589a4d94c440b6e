// Writes the types of the service from its description. A quantity is no bare string:
// its x-units make a template type, so that "62 psig" is no temperature to the compiler.
import { readFileSync, writeFileSync } from "node:fs";
import openapiTS, { astToString } from "openapi-typescript";
import ts from "typescript";

const { factory } = ts;

// text is the type `${number} °C`, with a second number and unit where there is one.
const text = (...units) => {
  const spans = units.map((unit, i) =>
    factory.createTemplateLiteralTypeSpan(
      factory.createKeywordTypeNode(ts.SyntaxKind.NumberKeyword),
      i < units.length - 1
        ? factory.createTemplateMiddle(` ${unit} ± `)
        : factory.createTemplateTail(` ${unit}`),
    ),
  );
  return factory.createTemplateLiteralType(factory.createTemplateHead(""), spans);
};

const description = new URL("../service/api/openapi.json", import.meta.url);
const nodes = await openapiTS(JSON.parse(readFileSync(description)), {
  transform(schema) {
    const units = schema["x-units"];
    if (!units) return undefined;
    const doubts = schema["x-uncertainty-units"] ?? [];
    return factory.createUnionTypeNode([
      ...units.map((u) => text(u)),
      ...units.flatMap((u) => doubts.map((d) => text(u, d))),
    ]);
  },
});
writeFileSync(new URL("description.d.ts", import.meta.url), astToString(nodes));
