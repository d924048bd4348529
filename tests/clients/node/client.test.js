// The node client against the live service on this machine.

import assert from "node:assert/strict";
import { execFile, execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, describe, it } from "node:test";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

import { connect, FlushbackError } from "flushback";

import { root, samples, startService } from "./live-service.js";
import { busySeconds, startMoody } from "./moody-service.js";

const run = promisify(execFile);
const wagtail = new URL("wagtail-half-stop.dxf", samples);
const drawings = readdirSync(samples).filter((name) => name.endsWith(".dxf")).map((name) => new URL(name, samples).href);
const token = "0123456789abcdef0123456789abcdef";
const client = fileURLToPath(new URL("artifacts/bin/Flushback.Cli/release/flushback.dll", root));
const example = fileURLToPath(new URL("clients/node/dist/check-folder.js", root));

// What the command line says of the same drawing is the other witness.
async function byCommandLine(...args) {
  const { stdout } = await run("dotnet", [client, ...args, "--json"], { maxBuffer: 1e8 }).catch((ended) => ended);
  return JSON.parse(stdout);
}

async function all(answers) {
  const found = [];
  for await (const answer of answers) found.push(answer);
  return found;
}

/** Leaves out what only one of the two writes: fields that are not there, and which of several is. */
function plain(value) {
  if (Array.isArray(value)) return value.map(plain);
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([name, field]) => field !== null && field !== undefined && !name.startsWith("_") && !(field in value))
      .map(([name, field]) => [name, plain(field)]),
  );
}

async function refusal(call) {
  try {
    await call();
  } catch (fault) {
    assert.ok(fault instanceof FlushbackError, `${fault}`);
    return fault;
  }

  return assert.fail("It was not refused.");
}

describe("answers", () => {
  let running, service;
  before(async () => {
    running = await startService();
    service = connect(running.address, { deadlineSeconds: 600 });
  });
  after(async () => {
    service.close();
    await running.close();
  });

  it("a check says the same as the command line", async () => {
    const { report } = await service.check(wagtail);

    assert.deepEqual(plain(report), plain(await byCommandLine("check", fileURLToPath(wagtail))));
  });

  it("a drawing may be bytes with a name", async () => {
    const { report } = await service.check(readFileSync(wagtail), { name: "Wagtail two" });

    assert.equal(report.name, "Wagtail two");
    // The sample was drawn to read 5 and 15 thou: clients/samples/README.md.
    assert.deepEqual(
      report.stops.map((stop) => (stop.liftMm / 0.0254).toFixed(2)),
      ["0.00", "5.00", "15.00"],
    );
  });

  it("settings and files reach the service", async () => {
    const { report, artifacts } = await service.check(wagtail, {
      bench: { targetSet: "TARGET_SET_FINISHED", closed: { liftMm: 0.4 }, stepDeg: 1 },
      handle: { widthMm: 3.2 },
      artifacts: ["ARTIFACT_KIND_HTML", "ARTIFACT_KIND_HANDLE_CSV"],
    });

    assert.deepEqual(
      report.stops.map((stop) => stop.targetMm),
      [0, 0, 0.4],
    );
    assert.deepEqual(
      artifacts.map((made) => made.fileName),
      ["report.html", "handle-curve.csv"],
    );
    assert.ok(artifacts[0].content.toString().startsWith("<!DOCTYPE html>"));
    assert.ok(report.handle);
  });

  it("the handle is reported when it is asked for, and only then", async () => {
    assert.ok((await service.check(wagtail, { handle: {} })).report.handle);
    assert.equal((await service.check(wagtail)).report.handle, null);
  });

  it("another unit and other layers are heard", async () => {
    const metres = await refusal(() => service.check(wagtail, { unit: "LENGTH_UNIT_METRE" }));
    const layers = await refusal(() => service.check(wagtail, { layers: { blade: "KLINGE" } }));

    assert.equal(metres.code, "INVALID_ARGUMENT");
    assert.match(layers.message, /KLINGE/);
  });

  it("an inspection says the same as the command line", async () => {
    const sheet = new URL("inspection/snipe-bad-sheet.dxf", samples);

    const { report, artifacts } = await service.inspect(sheet, {
      settings: { kerfMm: 0.2 },
      artifacts: ["ARTIFACT_KIND_CUT_PATH_DXF"],
    });

    const expected = await byCommandLine("inspect", fileURLToPath(sheet), "--kerf", "0.2mm");
    assert.deepEqual(plain(report), plain(expected));
    assert.deepEqual(
      artifacts.map((made) => made.fileName),
      ["cut-path.dxf"],
    );
  });

  it("a simulation says the same as the command line", async () => {
    const whimbrel = new URL("whimbrel-reads-high.dxf", samples);
    const passes = [{ roundCorner: { corner: { bladeFace: "BLADE_FACE_OPEN_CORNER" }, radiusMm: 0.3 } }];

    const { report } = await service.simulate(whimbrel, passes);

    const pass = "round open-corner radius=0.3mm";
    const expected = await byCommandLine("simulate", fileURLToPath(whimbrel), "--pass", pass);
    assert.equal(report.steps.length, 1);
    assert.deepEqual(
      report.steps.map((step) => plain(step.stops)),
      expected.steps.map((step) => plain(step.stops)),
    );
  });

  it("a plan says the same as the command line", async () => {
    const whimbrel = new URL("whimbrel-reads-high.dxf", samples);

    const { report, artifacts } = await service.plan(whimbrel, { artifacts: ["ARTIFACT_KIND_CORRECTED_DXF"] });

    const expected = await byCommandLine("plan", fileURLToPath(whimbrel));
    assert.ok(report.reachesTargets && report.steps.length > 0);
    assert.equal(report.removedMm2, expected.removedMm2);
    assert.deepEqual(plain(report.blade), plain(expected.blade));
    assert.match(artifacts[0].content.toString(), /FLUSHBACK_/);
  });

  it("twenty calls at once are answered alike", async () => {
    const answers = await Promise.all(Array.from({ length: 20 }, () => service.check(wagtail)));

    assert.equal(new Set(answers.map((answer) => JSON.stringify(answer))).size, 1);
  });

  it("each item of a library is answered as a single call would", async () => {
    const urls = drawings.map((drawing) => new URL(drawing));

    const checked = await all(service.checkMany(urls, { handle: {} }));

    assert.deepEqual(new Set(checked.map(({ item }) => item)), new Set(urls));
    for (const { item, answer } of checked) {
      assert.deepEqual(answer, await service.check(item, { handle: {} }));
    }
  });

  it("patterns of a library are drawn and checked", async () => {
    const asked = { name: "Stint", pattern: { blade: { lengthMm: 60 } } };

    const [{ answer }] = await all(service.checkMany([{ pattern: asked }]));

    const alone = await service.call("flushback.v1.ProfileExporter/Generate", asked);
    assert.deepEqual(answer.report, alone.report);
  });

  it("an item that is refused has its error and the others go on", async () => {
    const [nonsense, large] = [Buffer.from("nonsense"), Buffer.alloc(5_000_000, "0")];
    const items = [wagtail, nonsense, "/nowhere/knife.dxf", large, wagtail];

    const checked = await all(service.checkMany(items));

    const errors = new Map(checked.filter(({ error }) => error).map(({ item, error }) => [item, error]));
    assert.equal(checked.filter(({ answer }) => answer).length, 2);
    assert.deepEqual(
      items.slice(1, 4).map((item) => errors.get(item).code),
      ["INVALID_ARGUMENT", "NOT_FOUND", "RESOURCE_EXHAUSTED"],
    );
    assert.deepEqual(
      errors.get(nonsense).violations.map(({ field, reason }) => [field, reason]),
      [["knife.drawing.dxf", "DXF_NOT_DXF"]],
    );
    assert.equal(errors.get(large).limit.limit, "MessageBytes");
  });

  it("items are taken as answers are, so that a library may be endless", async () => {
    let [taken, ended] = [0, false];
    async function* endless() {
      try {
        for (; ; taken++) yield wagtail;
      } finally {
        ended = true;
      }
    }

    let answered = 0;
    for await (const { answer } of service.checkMany(endless())) {
      assert.equal(answer.report.stops.length, 3);
      if (++answered === 20) break;
    }

    assert.ok(taken <= 20 + 16, `${taken}`);
    assert.ok(ended);
  });

  it("no items have no answers", async () => {
    assert.deepEqual(await all(service.checkMany([])), []);
  });

  it("what goes wrong while items are made is thrown as it is", async () => {
    function* broken() {
      yield wagtail;
      throw new RangeError("No more.");
    }

    await assert.rejects(all(service.checkMany(broken())), RangeError);
  });

  it("a study says the same as the command line and how far it is", async () => {
    const told = [];

    const { report, artifacts } = await service.study(wagtail, { pinsMm: 0.02, profileMm: 0.03 }, {
      parts: 200,
      seed: 7,
      spread: "SPREAD_KIND_NORMAL",
      artifacts: ["ARTIFACT_KIND_SPREAD_CSV", "ARTIFACT_KIND_HTML"],
      progress: (solved, parts) => told.push([solved, parts]),
    });

    const options = "--pins 0.02mm --profile 0.03mm --parts 200 --seed 7 --distribution normal".split(" ");
    const expected = await byCommandLine("tolerance", fileURLToPath(wagtail), ...options);
    // The JSON form has numbers of 64 bits as texts, and protobuf.js an underscore where a digit follows.
    const named = JSON.stringify({ ...expected, seed: Number(expected.seed) })
      .replaceAll('"percentile25"', '"percentile_2_5"')
      .replaceAll('"percentile975"', '"percentile_97_5"');
    // Through the same form, in which a zero has no sign.
    assert.deepEqual(JSON.parse(JSON.stringify(plain(report))), plain(JSON.parse(named)));
    assert.deepEqual(
      artifacts.map((made) => made.fileName),
      ["spread.csv", "tolerance.html"],
    );
    assert.deepEqual(told.at(-1), [200, 200]);
  });

  it("a study in which nothing varies is refused", async () => {
    const error = await refusal(() => service.study(wagtail, {}));

    assert.deepEqual(
      error.violations.map(({ reason }) => reason),
      ["NOTHING_VARIES"],
    );
  });

  it("what progress throws ends the study", async () => {
    const progress = () => {
      throw new RangeError("Enough.");
    };

    await assert.rejects(service.study(wagtail, { pinsMm: 0.02 }, { parts: 20_000, progress }), RangeError);
  });

  it("the example prints a line for each drawing and ends as the command line would", async () => {
    const ended = await run("node", [example, fileURLToPath(samples), running.address]).catch((fault) => fault);

    assert.deepEqual([ended.code, ended.stderr], [1, ""]);
    assert.match(
      ended.stdout,
      /wagtail-half-stop\.dxf +\+0\.0 \(\+0\.000\) +\+5\.0 \(\+0\.127\) +\+15\.0 \(\+0\.381\) +clean/,
    );
  });

  it("the example says when nobody answers", async () => {
    const ended = await run("node", [example, fileURLToPath(samples), "http://127.0.0.1:1"]).catch((fault) => fault);

    assert.deepEqual([ended.code, ended.stdout], [3, ""]);
    assert.match(ended.stderr, /cannot be reached/);
  });
});

describe("refusals", () => {
  let running, service;
  before(async () => {
    running = await startService({ args: ["--Limits:Vertices=8"] });
    service = connect(running.address);
  });
  after(async () => {
    service.close();
    await running.close();
  });

  it("a file that is no drawing is told with its field", async () => {
    const error = await refusal(() => service.check(Buffer.from("nonsense")));

    assert.equal(error.code, "INVALID_ARGUMENT");
    assert.deepEqual(
      error.violations.map(({ field, reason }) => [field, reason]),
      [["knife.drawing.dxf", "DXF_NOT_DXF"]],
    );
    assert.equal(error.message, error.violations[0].description);
  });

  it("several violations are a sentence each", async () => {
    const error = await refusal(() => service.check(wagtail, { bench: { stepDeg: 90, leastTipDepthMm: -1 } }));

    assert.deepEqual(
      error.violations.map(({ field }) => field),
      ["bench.step_deg", "bench.least_tip_depth_mm"],
    );
    assert.equal(error.message.split("\n").length, 2);
  });

  it("more than is allowed is told with the limit", async () => {
    const error = await refusal(() => service.check(wagtail));

    assert.deepEqual([error.code, error.limit.limit, error.limit.allowed], ["RESOURCE_EXHAUSTED", "Vertices", "8"]);
  });

  it("a message that is too large is told with the limit", async () => {
    const error = await refusal(() => service.check(Buffer.alloc(5_000_000, "0")));

    assert.deepEqual([error.code, error.limit.limit], ["RESOURCE_EXHAUSTED", "MessageBytes"]);
  });

  it("a path that leads nowhere is told", async () => {
    const error = await refusal(() => service.check("/nowhere/knife.dxf"));

    assert.equal(error.code, "NOT_FOUND");
    assert.match(error.message, /\/nowhere\/knife\.dxf/);
  });

  it("a deadline that passes is told", async () => {
    const error = await refusal(() => service.check(wagtail, { deadlineSeconds: 0 }));

    assert.equal(error.code, "DEADLINE_EXCEEDED");
    assert.match(error.message, /deadlineSeconds/);
  });

  it("a library that is not answered in time is told", async () => {
    const error = await refusal(() => all(service.checkMany([wagtail], { deadlineSeconds: 0 })));

    assert.equal(error.code, "DEADLINE_EXCEEDED");
  });

  it("a method that is none is told", async () => {
    const error = await refusal(() => service.call("flushback.v1.ProfileChecker/Grind", {}));

    assert.equal(error.code, "UNIMPLEMENTED");
  });

  it("where nobody listens it is told", async () => {
    const nobody = connect("http://127.0.0.1:1");

    const error = await refusal(() => nobody.check(wagtail));

    assert.equal(error.code, "UNAVAILABLE");
    assert.match(error.message, /http:\/\/127\.0\.0\.1:1/);
    nobody.close();
  });

  it("an address that is none is refused", () => {
    for (const address of ["127.0.0.1:5210", "http://127.0.0.1", "ftp://127.0.0.1:1", "http://127.0.0.1:1/path"]) {
      assert.throws(() => connect(address), TypeError, address);
    }
  });
});

describe("a service that asks for more", () => {
  const folder = mkdtempSync(join(tmpdir(), "flushback-node-"));
  const make = (name) => {
    const [certificate, key] = [join(folder, `${name}.pem`), join(folder, `${name}.key`)];
    execFileSync("openssl", [
      ...["req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-days", "2"],
      ...["-subj", `/CN=${name}`, "-addext", "subjectAltName=IP:127.0.0.1,DNS:localhost"],
      ...["-keyout", key, "-out", certificate],
    ], { stdio: "ignore" });
    return { certificate, key };
  };
  const ours = make("server");
  const stranger = make("stranger");
  let running;
  before(async () => {
    writeFileSync(join(folder, "tokens"), token);
    running = await startService({
      scheme: "https",
      args: [
        `--Security:CertificateFile=${ours.certificate}`,
        `--Security:KeyFile=${ours.key}`,
        `--Security:TokenFile=${join(folder, "tokens")}`,
      ],
    });
  });
  after(async () => {
    await running.close();
    rmSync(folder, { recursive: true });
  });

  it("lets in who shows the token by TLS", async () => {
    const service = connect(running.address, { token, ca: ours.certificate });

    assert.equal((await service.check(wagtail)).report.stops.length, 3);
    service.close();
  });

  it("does not let in who shows none, or another", async () => {
    for (const access of [{}, { token: "fedcba9876543210fedcba9876543210" }]) {
      const service = connect(running.address, { ca: ours.certificate, ...access });

      const error = await refusal(() => service.check(wagtail));

      assert.equal(error.code, "UNAUTHENTICATED");
      assert.match(error.message, /token/);
      service.close();
    }
  });

  it("is not trusted with a certificate of another authority", async () => {
    const service = connect(running.address, { token, ca: stranger.certificate });

    assert.equal((await refusal(() => service.check(wagtail))).code, "UNAVAILABLE");
    service.close();
  });

  it("gets no token in the clear beyond this machine", () => {
    assert.throws(() => connect("http://192.0.2.1:5210", { token }), /in the clear/);
  });

  it("has no use for certificates without TLS", () => {
    assert.throws(() => connect("http://127.0.0.1:5210", { ca: ours.certificate }), /https:/);
  });
});

describe("tries", () => {
  let running;
  before(async () => {
    running = await startService();
  });
  after(() => running.close());

  const asked = async (mood, call) => {
    const moody = await startMoody(running.address, mood);
    const service = connect(moody.address);
    try {
      return { result: await call(service), calls: moody.calls };
    } finally {
      service.close();
      moody.close();
    }
  };

  it("an unavailable service is asked again until it answers", async () => {
    const { result, calls } = await asked({ refusals: 3 }, (service) => service.check(wagtail));

    assert.deepEqual([result.report.stops.length, calls], [3, 4]);
  });

  it("after five tries it gives up", async () => {
    const { result, calls } = await asked({ refusals: 9 }, (service) => refusal(() => service.check(wagtail)));

    assert.deepEqual([result.code, calls], ["UNAVAILABLE", 5]);
  });

  it("it waits as long as the service says", async () => {
    const started = performance.now();

    const { calls } = await asked({ refusals: 1, pushbackMs: 3000 }, (service) => service.check(wagtail));

    // By itself it would wait a tenth of a second at most.
    assert.equal(calls, 2);
    assert.ok(performance.now() - started >= 3000);
  });

  it("a service that says never again is not asked again", async () => {
    const mood = { refusals: 9, pushbackMs: -1 };

    const { calls } = await asked(mood, (service) => refusal(() => service.check(wagtail)));

    assert.equal(calls, 1);
  });

  it("an item without room is sent again when the service says", async () => {
    const started = performance.now();

    const { result, calls } = await asked({ busyItems: 3 }, (service) => all(service.checkMany(Array(6).fill(wagtail))));

    assert.deepEqual([result.map(({ answer }) => answer.report.stops.length), calls], [Array(6).fill(3), 1]);
    assert.ok(performance.now() - started >= busySeconds * 1000);
  });

  it("an item without room is given up after five tries", async () => {
    const { result } = await asked({ busyItems: 5 }, (service) => all(service.checkMany([wagtail])));

    assert.deepEqual(
      result.map(({ error }) => [error.code, error.retryAfterSeconds]),
      [["UNAVAILABLE", busySeconds]],
    );
  });

  it("what a broken stream did not answer goes over another", async () => {
    const items = [...drawings, ...drawings].map((drawing) => new URL(drawing));

    const { result, calls } = await asked({ cutAt: 4 }, (service) => all(service.checkMany(items)));

    assert.equal(calls, 2);
    assert.ok(result.every(({ answer }) => answer));
    assert.deepEqual(new Set(result.map(({ item }) => item)), new Set(items));
    assert.equal(result.length, items.length);
  });

  it("a library that no service takes is given up after five streams", async () => {
    const library = (service) => refusal(() => all(service.checkMany([wagtail])));

    const { result, calls } = await asked({ refusals: 9 }, library);

    assert.deepEqual([result.code, calls], ["UNAVAILABLE", 5]);
  });
});
