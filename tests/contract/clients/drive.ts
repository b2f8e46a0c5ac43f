// A configurator in small: it asks the service through types made from its document, and prints what it learnt.
import createClient from "openapi-fetch";
import type { components, paths } from "./contract.js";

type CheckRequest = components["schemas"]["CheckRequest"];

declare const process: { argv: string[] };
const [, , baseUrl, story] = process.argv;
if (baseUrl === undefined || story === undefined) {
  throw new Error("usage: drive.js BASE_URL REQUEST");
}
const client = createClient<paths>({ baseUrl });
const asked = JSON.parse(story) as CheckRequest;
// An axle may be left out of a candidate; this caller proposes for both.
const front = asked.candidate.front;
if (front === undefined) {
  throw new Error("the story proposes nothing in front");
}

const check = await client.POST("/v1/fitments/check", { body: asked });
if (check.data === undefined) {
  throw new Error(check.error.detail);
}
const verdict: string = check.data.verdict;
const worst = check.data.findings[0];

const misspelt: CheckRequest = {
  ...asked,
  candidate: { ...asked.candidate, front: { ...front, tyre: { size: "no tyre" } } },
};
const refused = await client.POST("/v1/fitments/check", { body: misspelt });

const { candidate, ...question } = asked;
const compared = await client.POST("/v1/fitments/compare", {
  body: { ...question, candidates: [candidate, misspelt.candidate] },
});
if (compared.data === undefined) {
  throw new Error(compared.error.detail);
}
const rows = compared.data.rows.map((row) => row.verdict);
const refusedRows = compared.data.refused.map((row) => [row.index, row.errors[0]?.pointer]);

const searched = await client.POST("/v1/fitments/search", {
  body: { ...question, rims: { front: [front.rim] }, stock: [{ size: "205/55 R16 94W XL" }, { size: "205/55 R16 91V" }] },
});
const found = searched.data?.rows.map((row) => row.fitment.front.tyre);

// What a later version may answer: a word and a member that this client does not know.
const later = createClient<paths>({
  baseUrl,
  fetch: async (request) => {
    const answer = (await (await fetch(request)).json()) as object;
    return Response.json({ ...answer, verdict: "later", later: { more: 1 } });
  },
});
const future = await later.POST("/v1/fitments/check", { body: asked });
const table_of_rows = await client.POST("/v1/fitments/compare.csv", { body: { ...question, candidates: [candidate] }, parseAs: "text" });

const packs = await client.GET("/v1/rule-packs");
const tyre = await client.GET("/v1/designations/tyre", { params: { query: { text: "205/55 R16 91V" } } });
const table = await client.GET("/v1/tables/{name}", { params: { path: { name: "speed-symbol" } } });

console.log(
  JSON.stringify({
    verdict,
    worst: worst === undefined ? null : [worst.code, worst.outcome, worst.measured ?? null, worst.limit ?? null],
    refused: refused.error?.errors.map((fault) => [fault.pointer, fault.code, fault.position ?? null]),
    status: refused.response.status,
    rows,
    refused_rows: refusedRows,
    found,
    future: future.data?.verdict,
    carried: worst?.parameters?.["carried"]?.value,
    header: table_of_rows.data?.split(",", 2),
    packs: packs.data?.rule_packs.map((pack) => pack.id),
    load_index: tyre.data?.load_index,
    table_rows: table.data?.rows.length,
  }),
);
