/** What a service answers when it does not answer with a report, as one error. */

import { status, type Metadata, type ServiceError } from "@grpc/grpc-js";
import { fromJSON, type MessageTypeDefinition } from "@grpc/proto-loader";

import type { ItemErrorAnswer } from "./contract/flushback/v1/ItemError.js";

/** One thing that is wrong with a request. */
export interface Violation {
  /** Path of the field in the request, such as knife.drawing.dxf. */
  field: string;
  /** What is wrong, where, and what to do. */
  description: string;
  /** A stable word for it, such as NO_OUTLINE. */
  reason: string;
}

/** A request was refused, or no service answered. Its message is a sentence for each thing that is wrong. */
export class FlushbackError extends Error {
  override readonly name = "FlushbackError";

  /**
   * @param code Status of gRPC: INVALID_ARGUMENT for input that is no knife, RESOURCE_EXHAUSTED over a limit, NOT_FOUND
   *   for a drawing that cannot be read from disk, UNAVAILABLE, DEADLINE_EXCEEDED or UNAUTHENTICATED where no answer
   *   came.
   * @param sentences What is wrong.
   * @param violations What is wrong with the request, each with its field; empty for any other status.
   * @param limit The limit that was reached, its name as limit, what it allows as allowed; empty for any other error.
   * @param retryAfterSeconds When a busy service will have room; undefined for any other error.
   */
  constructor(
    readonly code: string,
    sentences: string[],
    readonly violations: readonly Violation[] = [],
    readonly limit: Readonly<Record<string, string>> = {},
    readonly retryAfterSeconds?: number,
  ) {
    super(sentences.join("\n"));
  }
}

/** The error for what gRPC reports. */
export function told(refused: ServiceError, address: string): FlushbackError {
  return errorOf(refused.code, refused.details, detailsIn(refused.metadata), address);
}

/** The error for what a stream or a call throws; what is none of theirs is thrown on. */
export function refused(fault: unknown, address: string): FlushbackError {
  if (fault instanceof FlushbackError) {
    return fault;
  }

  if (fault instanceof Error && "code" in fault && "metadata" in fault) {
    return told(fault as ServiceError, address);
  }

  throw fault;
}

/** The error for what an item of a library is told. */
export function toldByItem(error: ItemErrorAnswer, address: string): FlushbackError {
  return errorOf(error.code, error.message, error.details, address);
}

/** The error for a service that is gone. */
export function lostAt(address: string): FlushbackError {
  return errorOf(status.UNAVAILABLE, "", [], address);
}

/** The error for an answer that does not come. */
export function lateAt(address: string): FlushbackError {
  return errorOf(status.DEADLINE_EXCEEDED, "", [], address);
}

function errorOf(number: number, said: string, details: Detail[], address: string): FlushbackError {
  const code = status[number] ?? "UNKNOWN";
  const { violations, limit, retryAfterSeconds } = read(details);
  return new FlushbackError(
    code,
    sentencesOf(code, said, violations, retryAfterSeconds, address),
    violations,
    limit,
    retryAfterSeconds,
  );
}

function sentencesOf(
  code: string,
  said: string,
  violations: Violation[],
  retryAfterSeconds: number | undefined,
  address: string,
): string[] {
  if (violations.length > 0) {
    return violations.map((violation) => violation.description);
  }

  if (code === "UNAVAILABLE" && retryAfterSeconds === undefined) {
    return [`The service at ${address} cannot be reached; start it, or look at address and certificates.`];
  }

  return code === "DEADLINE_EXCEEDED"
    ? [`The service at ${address} did not answer in time; try again, or give it longer by deadlineSeconds.`]
    : [said];
}

interface Details {
  violations: Violation[];
  limit: Record<string, string>;
  retryAfterSeconds: number | undefined;
}

interface Detail {
  type_url: string;
  value: Buffer;
}

function detailsIn(metadata: Metadata): Detail[] {
  const [bytes] = metadata.get("grpc-status-details-bin");
  return bytes instanceof Buffer ? decode<{ details: Detail[] }>("Status", bytes).details : [];
}

function read(details: Detail[]): Details {
  const found: Details = { violations: [], limit: {}, retryAfterSeconds: undefined };
  for (const detail of details) {
    switch (detail.type_url.split("/").at(-1)) {
      case "google.rpc.BadRequest":
        found.violations = decode<{ fieldViolations: Violation[] }>("BadRequest", detail.value).fieldViolations;
        break;
      case "google.rpc.ErrorInfo":
        found.limit = Object.fromEntries(
          decode<{ metadata: { key: string; value: string }[] }>("ErrorInfo", detail.value).metadata.map((entry) => [
            entry.key,
            entry.value,
          ]),
        );
        break;
      case "google.rpc.RetryInfo": {
        const { retryDelay } = decode<{ retryDelay: { seconds: number; nanos: number } }>("RetryInfo", detail.value);
        found.retryAfterSeconds = retryDelay.seconds + retryDelay.nanos / 1e9;
        break;
      }
    }
  }

  return found;
}

// google/rpc/status.proto and error_details.proto, as far as they are read here.
const WORDS = fromJSON(
  {
    nested: {
      Status: {
        fields: {
          code: { type: "int32", id: 1 },
          message: { type: "string", id: 2 },
          details: { rule: "repeated", type: "Detail", id: 3 },
        },
      },
      Detail: { fields: { type_url: { type: "string", id: 1 }, value: { type: "bytes", id: 2 } } },
      BadRequest: { fields: { fieldViolations: { rule: "repeated", type: "FieldViolation", id: 1 } } },
      FieldViolation: {
        fields: {
          field: { type: "string", id: 1 },
          description: { type: "string", id: 2 },
          reason: { type: "string", id: 3 },
        },
      },
      ErrorInfo: {
        fields: {
          reason: { type: "string", id: 1 },
          domain: { type: "string", id: 2 },
          // A map is a list of entries on the wire.
          metadata: { rule: "repeated", type: "Entry", id: 3 },
        },
      },
      Entry: { fields: { key: { type: "string", id: 1 }, value: { type: "string", id: 2 } } },
      RetryInfo: { fields: { retryDelay: { type: "Duration", id: 1 } } },
      Duration: { fields: { seconds: { type: "int64", id: 1 }, nanos: { type: "int32", id: 2 } } },
    },
  },
  { defaults: true, longs: Number },
);

function decode<Message>(name: string, bytes: Buffer): Message {
  return (WORDS[name] as MessageTypeDefinition<object, object>).deserialize(bytes) as Message;
}
