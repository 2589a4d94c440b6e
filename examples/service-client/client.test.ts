// Every operation of the description, called by its generated types on the service itself.
import assert from "node:assert/strict";
import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { after, before, test } from "node:test";
import createClient from "openapi-fetch";
import type { components, paths } from "./description.js";

type Visit = components["schemas"]["Visit"];

let service: ChildProcess;
let client: ReturnType<typeof createClient<paths>>;
const dir = mkdtempSync(join(tmpdir(), "satline-client"));
const called = new Set<string>();

before(async () => {
  const program = join(dir, "service");
  execFileSync("go", ["build", "-o", program, "../service"]);
  service = spawn(program, ["-listen", "127.0.0.1:0", "-operations", "127.0.0.1:0", "-quiet"], {
    stdio: ["ignore", "ignore", "pipe"],
  });
  const lines = createInterface({ input: service.stderr! });
  const [first] = await new Promise<[string]>((have) => lines.once("line", (line) => have([line])));
  client = createClient<paths>({ baseUrl: `http://${JSON.parse(first).address}` });
  client.use({
    onRequest({ schemaPath, request }) {
      called.add(`${request.method.toLowerCase()} ${schemaPath}`);
    },
  });
});

after(() => {
  service.kill();
  rmSync(dir, { recursive: true });
});

// Invented.
const visit: Visit = {
  units: "IP",
  equipment: { refrigerant: "R-410A", metering: "fixed restrictor", nominalCapacity: "3 ton" },
  site: { elevation: "4700 ft" },
  readings: {
    suctionPressure: "118 psig",
    suctionLine: "70 °F",
    liquidPressure: "318 psig",
    liquidLine: "96 °F",
    outdoorDryBulb: "82 °F",
    returnDryBulb: "75 °F",
    returnWetBulb: "63 °F ± 0.6 °F",
  },
};

test("a visit is assessed", async () => {
  const { data, error } = await client.POST("/v1/assess", {
    body: visit,
    params: { query: { units: "SI" } },
  });
  assert.equal(error, undefined);
  assert.equal(data?.charge?.outcome, "low");
  assert.match(data?.charge?.reading?.measured ?? "", / K ± /);
});

test("a mix-up of units is one of types", async () => {
  const { error, response } = await client.POST("/v1/assess", {
    // @ts-expect-error: a pressure is no temperature
    body: { ...visit, readings: { liquidLine: "96 psig" } },
  });
  assert.equal(response.status, 400);
  assert.equal(error?.type, "/problems/malformed");
  assert.equal(error?.field, "readings.liquidLine");
});

test("a batch has a result for each line", async () => {
  const { data } = await client.POST("/v1/assess/batch", {
    body: visit,
    bodySerializer: (one) => `${JSON.stringify(one)}\n{}\n`,
    headers: { "Content-Type": "application/x-ndjson" },
    parseAs: "text",
  });
  const results = (data as unknown as string)
    .trim()
    .split("\n")
    .map((line): components["schemas"]["BatchResult"] => JSON.parse(line));
  assert.deepEqual(
    results.map((r) => [r.line, r.assessment !== undefined, r.problem?.status]),
    [
      [1, true, undefined],
      [2, false, 422],
    ],
  );
});

test("refrigerants", async () => {
  const list = await client.GET("/v1/refrigerants");
  assert.ok(list.data?.some((r) => r.designation === "R-32"));
  const tag = list.response.headers.get("ETag");
  const again = await client.GET("/v1/refrigerants", {
    params: { header: { "If-None-Match": tag ?? "" } },
  });
  assert.equal(again.response.status, 304);
  const sheet = await client.GET("/v1/refrigerants/{name}", { params: { path: { name: "r454b" } } });
  assert.equal(sheet.data?.designation, "R-454B");
});

test("properties", async () => {
  const saturation = await client.POST("/v1/refrigerant/saturation", {
    body: { refrigerant: "R-454B", gauge: "118 psig", line: "52 °F" },
  });
  assert.match(saturation.data?.superheat ?? "", /°F$/);
  const state = await client.POST("/v1/refrigerant/state", {
    body: { refrigerant: "R-32", pressure: "900 kPa", temperature: "15 °C" },
  });
  assert.equal(state.data?.phase, "vapor");
  const air = await client.POST("/v1/air", { body: { dryBulb: "75 °F", wetBulb: "62 °F" } });
  assert.match(air.data?.dewPoint ?? "", /°F$/);
  const target = await client.POST("/v1/charge/target", {
    body: { method: "superheat", returnWetBulb: "64 °F", outdoorDryBulb: "88 °F" },
  });
  assert.equal(target.data?.method, "superheat");
});

test("the service says what it is", async () => {
  const kind = await client.GET("/problems/{kind}", { params: { path: { kind: "input" } } });
  assert.equal(kind.data?.status, 422);
  const { response } = await client.GET("/openapi.json");
  assert.equal(response.status, 200);
  assert.match(response.headers.get("Server") ?? "", /^satline\//);
});

test("every operation was called", () => {
  const text = readFileSync("../service/api/openapi.json", "utf8");
  for (const [path, operations] of Object.entries(JSON.parse(text).paths)) {
    for (const method of Object.keys(operations as object)) {
      assert.ok(called.has(`${method} ${path}`), `${method} ${path} was not called`);
    }
  }
});
