/**
 * Calls Flushback, the service that reads a slip-joint knife's dial off the drawing.
 *
 *     import { connect } from "flushback";
 *
 *     const service = connect("http://127.0.0.1:5210");
 *     const { report } = await service.check("wagtail.dxf");
 *     for (const stop of report?.stops ?? []) console.log(stop.stop, stop.liftMm.toFixed(3), "mm");
 *     service.close();
 *
 * Requests and answers have the names of the contract, protos/flushback/v1, in camel case. Lengths are in millimetres.
 */

import { readFile } from "node:fs/promises";
import { basename, extname } from "node:path";
import { fileURLToPath } from "node:url";

import { open, type Access, type Channel } from "./channel.js";
import { FlushbackError, refused } from "./errors.js";
import { answersTo, type Checked } from "./library.js";

import type { ArtifactAnswer } from "./contract/flushback/v1/Artifact.js";
import type { ArtifactKind } from "./contract/flushback/v1/ArtifactKind.js";
import type { BenchSettings } from "./contract/flushback/v1/BenchSettings.js";
import type { CheckManyRequest } from "./contract/flushback/v1/CheckManyRequest.js";
import type { CheckRequest } from "./contract/flushback/v1/CheckRequest.js";
import type { CheckResponseAnswer } from "./contract/flushback/v1/CheckResponse.js";
import type { HandleSettings } from "./contract/flushback/v1/HandleSettings.js";
import type { InspectionSettings } from "./contract/flushback/v1/InspectionSettings.js";
import type { InspectRequest } from "./contract/flushback/v1/InspectRequest.js";
import type { InspectResponseAnswer } from "./contract/flushback/v1/InspectResponse.js";
import type { Knife } from "./contract/flushback/v1/Knife.js";
import type { LayerRoles } from "./contract/flushback/v1/LayerRoles.js";
import type { LengthUnit } from "./contract/flushback/v1/LengthUnit.js";
import type { Pass } from "./contract/flushback/v1/Pass.js";
import type { PassSettings } from "./contract/flushback/v1/PassSettings.js";
import type { MeasuredReadings } from "./contract/flushback/v1/MeasuredReadings.js";
import type { PlanRequest } from "./contract/flushback/v1/PlanRequest.js";
import type { PlanResponseAnswer } from "./contract/flushback/v1/PlanResponse.js";
import type { PatternCheckRequest } from "./contract/flushback/v1/PatternCheckRequest.js";
import type { PlanSettings } from "./contract/flushback/v1/PlanSettings.js";
import type { SimulateRequest } from "./contract/flushback/v1/SimulateRequest.js";
import type { SimulateResponseAnswer } from "./contract/flushback/v1/SimulateResponse.js";
import type { SpreadKind } from "./contract/flushback/v1/SpreadKind.js";
import type { StudyReportAnswer } from "./contract/flushback/v1/StudyReport.js";
import type { StudyRequest } from "./contract/flushback/v1/StudyRequest.js";
import type { StudyResponseAnswer } from "./contract/flushback/v1/StudyResponse.js";
import type { Tolerances } from "./contract/flushback/v1/Tolerances.js";

export { FlushbackError, type Violation } from "./errors.js";
export type { Access } from "./channel.js";
export type { Checked } from "./library.js";
export type { CheckReportAnswer as CheckReport } from "./contract/flushback/v1/CheckReport.js";
export type { InspectReportAnswer as InspectReport } from "./contract/flushback/v1/InspectReport.js";
export type { PlanReportAnswer as PlanReport } from "./contract/flushback/v1/PlanReport.js";
export type { SimulateReportAnswer as SimulateReport } from "./contract/flushback/v1/SimulateReport.js";
export type {
  ArtifactAnswer as Artifact,
  ArtifactKind,
  BenchSettings,
  CheckRequest,
  CheckResponseAnswer as CheckResponse,
  HandleSettings,
  InspectionSettings,
  InspectResponseAnswer as InspectResponse,
  Knife,
  LayerRoles,
  LengthUnit,
  MeasuredReadings,
  Pass,
  PassSettings,
  PatternCheckRequest,
  PlanResponseAnswer as PlanResponse,
  PlanSettings,
  SimulateResponseAnswer as SimulateResponse,
  SpreadKind,
  StudyReportAnswer as StudyReport,
  Tolerances,
};

/** A drawing: the path of a DXF, or its bytes. */
export type Drawing = string | URL | Uint8Array;

/** An item of a library: a drawing; or a check or a pattern that says all of it by itself. */
export type Item = Drawing | { check: CheckRequest } | { pattern: PatternCheckRequest };

/** What random parts of a knife read. */
export interface Studied {
  report: StudyReportAnswer;
  /** The files asked for, in the order asked. */
  artifacts: ArtifactAnswer[];
}

/** What every call takes. */
export interface CallOptions {
  /** What the drawing is called; the name of its file without it. */
  name?: string;
  /** Unit of the drawing, over what the file says. */
  unit?: LengthUnit;
  /** Files to make beside the report. */
  artifacts?: ArtifactKind[];
  /** How long to wait for the answer, in seconds, tries included, in place of what was said to connect. */
  deadlineSeconds?: number;
}

/** What calls with a knife take. */
export interface KnifeOptions extends CallOptions {
  /** Other names of the layers. */
  layers?: LayerRoles;
  /** More of the knife, such as drawnBladeAngleDeg; also outlines in place of a drawing of no bytes. */
  knife?: Knife;
  /** Targets and tolerances. */
  bench?: BenchSettings;
}

/** What a check takes. */
export interface CheckOptions extends KnifeOptions {
  /** Spring and steel, to have the knife in its handle reported too; {} takes every default. */
  handle?: HandleSettings;
}

/** What a library takes: what is said of a check holds for the drawings among its items. */
export interface LibraryOptions extends Omit<CheckOptions, "name"> {
  /** How long to wait for the next answer, in seconds, in place of what was said to connect. */
  deadlineSeconds?: number;
}

/** What a study takes. */
export interface StudyOptions extends KnifeOptions {
  /** Spring and steel, to have pull and stress studied too. */
  handle?: HandleSettings;
  /** How dimensions are spread between their limits; anywhere, each place as likely, without it. */
  spread?: SpreadKind;
  /** How many parts; 10,000 without it. */
  parts?: number;
  /** Which parts: the same seed draws the same parts. */
  seed?: number;
  /** Is told now and then how many parts are read, and of how many. */
  progress?: (solved: number, parts: number) => void;
}

/** What an inspection takes. */
export interface InspectOptions extends CallOptions {
  /** What to hold the drawing against. */
  settings?: InspectionSettings;
  /** Whether the unit of a drawing that states none may be guessed from its size. */
  guessUnit?: boolean;
}

/** What a simulation takes. */
export interface SimulateOptions extends KnifeOptions {
  /** What has to be left. */
  remains?: PassSettings;
}

/** What a plan takes. */
export interface PlanOptions extends SimulateOptions {
  /** Windows and corners wanted, and what may be taken. */
  plan?: PlanSettings;
  /** What the dial really read. */
  measured?: MeasuredReadings;
}

/**
 * Opens a way to a running service. Nothing is sent before the first call.
 *
 * @param address Where it listens: http://host:port, or https://host:port for TLS.
 * @param access What it asks of its callers, and how long to wait for it.
 * @throws TypeError The address is none, or does not go with the rest; an error of node where a file cannot be read.
 */
export function connect(address = "http://127.0.0.1:5210", access: Access = {}): Service {
  return new Service(open(address, access));
}

/** A running service. */
export class Service {
  readonly #channel: Channel;

  /** @internal */
  constructor(channel: Channel) {
    this.#channel = channel;
  }

  /**
   * Reads the dial off a drawing of a blade and its spring. A knife that reads badly is no error but a report with
   * findings.
   *
   * @throws FlushbackError The drawing is no knife, is over a limit, or no service answered.
   */
  async check(drawing: Drawing, options: CheckOptions = {}): Promise<CheckResponseAnswer> {
    return this.call("flushback.v1.ProfileChecker/Check", await ofCheck(drawing, options), options.deadlineSeconds);
  }

  /**
   * Checks a library over one call, and gives each answer as soon as it is there, in any order.
   *
   * Items are taken as answers are, sixteen ahead of them at most, so that a library may be of any size. An item that is
   * refused gets its error, and the others go on. One for which a busy service has no room is sent again when the service
   * says, five times in all, and what is not answered when a stream breaks goes over another one.
   *
   * @throws FlushbackError No service answered five times in a row, or for longer than the deadline.
   */
  checkMany<Of extends Item>(
    items: Iterable<Of> | AsyncIterable<Of>,
    options: LibraryOptions = {},
  ): AsyncGenerator<Checked<Of>, void, void> {
    return answersTo({
      items,
      toRequest: async (item): Promise<CheckManyRequest> =>
        isDrawing(item) ? { check: await ofCheck(item, options) } : item,
      open: () => this.#channel.stream("flushback.v1.ProfileChecker/CheckMany"),
      deadlineSeconds: options.deadlineSeconds ?? this.#channel.deadlineSeconds,
      address: this.#channel.address,
    });
  }

  /**
   * Looks at a drawing as the shop that is to cut it does.
   *
   * @throws FlushbackError The file is no drawing, is over a limit, or no service answered.
   */
  async inspect(drawing: Drawing, options: InspectOptions = {}): Promise<InspectResponseAnswer> {
    const { content, title } = await read(drawing, options.name);
    const request: InspectRequest = {
      name: title,
      dxf: content,
      unit: options.unit ?? "LENGTH_UNIT_UNSPECIFIED",
      settings: options.settings ?? null,
      guessUnit: options.guessUnit ?? false,
      artifacts: options.artifacts ?? [],
    };
    return this.call("flushback.v1.ProfileInspector/Inspect", request, options.deadlineSeconds);
  }

  /**
   * Takes metal off on the drawing and reads the dial after every pass.
   *
   * @throws FlushbackError A pass cannot be made, or as for a check.
   */
  async simulate(drawing: Drawing, passes: Pass[], options: SimulateOptions = {}): Promise<SimulateResponseAnswer> {
    const request: SimulateRequest = {
      ...(await ofKnife(drawing, options)),
      passes,
      remains: options.remains ?? null,
    };
    return this.call("flushback.v1.BenchSimulator/Simulate", request, options.deadlineSeconds);
  }

  /**
   * Plans the least metal to take off so that every stop reads as wanted.
   *
   * @throws FlushbackError As for a check.
   */
  async plan(drawing: Drawing, options: PlanOptions = {}): Promise<PlanResponseAnswer> {
    const request: PlanRequest = {
      ...(await ofKnife(drawing, options)),
      plan: options.plan ?? null,
      remains: options.remains ?? null,
      measured: options.measured ?? null,
    };
    return this.call("flushback.v1.BenchSimulator/Plan", request, options.deadlineSeconds);
  }

  /**
   * Reads random parts of a knife, each made within its tolerances.
   *
   * @throws FlushbackError Nothing varies, or as for a check.
   */
  async study(drawing: Drawing, tolerances: Tolerances, options: StudyOptions = {}): Promise<Studied> {
    const request: StudyRequest = {
      ...(await ofKnife(drawing, options)),
      handle: options.handle ?? null,
      tolerances,
      spread: options.spread ?? "SPREAD_KIND_UNIFORM",
      ...(options.parts === undefined ? {} : { parts: options.parts }),
      ...(options.seed === undefined ? {} : { seed: options.seed }),
    };
    const method = "flushback.v1.ToleranceStudy/Study";
    const stream = this.#channel.many<StudyResponseAnswer>(method, request, options.deadlineSeconds);
    stream.on("error", () => {}); // It is told by reading.
    let report: StudyReportAnswer | undefined;
    const artifacts: ArtifactAnswer[] = [];
    try {
      for await (const told of stream as AsyncIterable<StudyResponseAnswer>) {
        report = told.report ?? report;
        if (told.artifact) artifacts.push(told.artifact);
        if (told.progress) options.progress?.(told.progress.solved, told.progress.parts);
      }
    } catch (fault) {
      throw refused(fault, this.#channel.address);
    } finally {
      stream.cancel();
    }

    return { report: report!, artifacts };
  }

  /**
   * Calls any method of the contract that takes one message and gives one.
   *
   * @param method Its name, such as flushback.v1.ProfileChecker/Check.
   * @param request The request, with the names of the contract in camel case.
   * @throws FlushbackError As for a check.
   */
  call<Answer>(method: string, request: object, deadlineSeconds?: number): Promise<Answer> {
    return this.#channel.call(method, request, deadlineSeconds);
  }

  /** Hangs up. */
  close(): void {
    this.#channel.close();
  }
}

function isDrawing(item: Item): item is Drawing {
  return typeof item === "string" || item instanceof URL || item instanceof Uint8Array;
}

async function ofCheck(drawing: Drawing, options: CheckOptions): Promise<CheckRequest> {
  return { ...(await ofKnife(drawing, options)), handle: options.handle ?? null };
}

async function ofKnife(drawing: Drawing, options: KnifeOptions): Promise<CheckRequest> {
  const { content, title } = await read(drawing, options.name);
  const drawn: Knife = {
    drawing: { dxf: content, unit: options.unit ?? "LENGTH_UNIT_UNSPECIFIED", layers: options.layers ?? null },
  };
  return {
    name: title,
    knife: { ...(content.length > 0 ? drawn : {}), ...options.knife },
    bench: options.bench ?? null,
    artifacts: options.artifacts ?? [],
  };
}

async function read(drawing: Drawing, name?: string): Promise<{ content: Buffer; title: string }> {
  if (drawing instanceof Uint8Array) {
    return { content: Buffer.from(drawing), title: name ?? "" };
  }

  const path = drawing instanceof URL ? fileURLToPath(drawing) : drawing;
  try {
    return { content: await readFile(path), title: name ?? basename(path, extname(path)) };
  } catch (fault) {
    const why = fault instanceof Error ? fault.message : String(fault);
    throw new FlushbackError("NOT_FOUND", [`The drawing '${path}' cannot be read: ${why}.`]);
  }
}
