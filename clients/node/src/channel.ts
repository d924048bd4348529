/** How the service is reached: address, TLS, token, deadline, and what is tried again. */

import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

import * as grpc from "@grpc/grpc-js";
import { loadSync, type PackageDefinition } from "@grpc/proto-loader";

import { FlushbackError, told } from "./errors.js";

/** What a service asks of its callers, and how long they wait. */
export interface Access {
  /** The token it asks for. Beyond this machine it is sent by TLS only. */
  token?: string;
  /** File with the certificates, as PEM, of who vouches for the service; those node trusts without it. */
  ca?: string | URL;
  /** File with your own certificate, as PEM, where the service asks for one. */
  certificate?: string | URL;
  /** File with the key of that certificate, as PEM. */
  key?: string | URL;
  /** How long each call waits for its answer, in seconds, tries included; 60 without it. */
  deadlineSeconds?: number;
}

/** A way to a service. */
export interface Channel {
  /** Where it is. */
  readonly address: string;
  /** How long a call waits for its answer, unless told otherwise. */
  readonly deadlineSeconds: number;
  call<Answer>(method: string, request: object, deadlineSeconds?: number): Promise<Answer>;
  /** Calls what answers one message with many. */
  many<Answer>(method: string, request: object, deadlineSeconds?: number): grpc.ClientReadableStream<Answer>;
  /** Calls what answers many messages with many; it has no deadline. */
  stream<Request, Answer>(method: string): grpc.ClientDuplexStream<Request, Answer>;
  close(): void;
}

const LARGEST_ANSWER = 256 * 1024 * 1024; // A page, a fine curve and a drawing go beyond gRPC's own 4 MB.
const LARGEST_KEPT = 80 * 1024 * 1024; // A request can only be sent again when it was kept.
const USUAL_DEADLINE_SECONDS = 60;

// Nothing changes on the service, so that it may be asked again whenever none answered. A service that is busy says by
// itself when (grpc-retry-pushback-ms), which gRPC goes by. Every other status is an answer and would be the same again.
const SERVICE_CONFIG = {
  loadBalancingConfig: [],
  methodConfig: [
    // A library is sent again by library.ts, since less than all of it is left to be answered.
    { name: [{ service: "flushback.v1.ProfileChecker", method: "CheckMany" }] },
    {
      name: [{}],
      retryPolicy: {
        maxAttempts: 5,
        initialBackoff: "0.1s",
        maxBackoff: "2s",
        backoffMultiplier: 2,
        retryableStatusCodes: ["UNAVAILABLE"],
      },
    },
  ],
};

const PROTOS = fileURLToPath(new URL("../protos/", import.meta.url));

let contract: PackageDefinition | undefined;

/** The contract that comes with this package. */
function loaded(): PackageDefinition {
  return (contract ??= loadSync(
    readdirSync(`${PROTOS}flushback/v1`).map((file) => `flushback/v1/${file}`),
    { includeDirs: [PROTOS], longs: Number, enums: String, defaults: true, oneofs: true },
  ));
}

/** Opens a way to a service. */
export function open(address: string, access: Access): Channel {
  const url = addressOf(address);
  refuseWhatDoesNotGo(url, access);
  const client = new grpc.Client(targetOf(url), credentialsFor(url, access), {
    "grpc.service_config": JSON.stringify(SERVICE_CONFIG),
    "grpc.service_config_disable_resolution": 1,
    "grpc.enable_retries": 1,
    "grpc.per_rpc_retry_buffer_size": LARGEST_KEPT,
    "grpc.retry_buffer_size": 2 * LARGEST_KEPT,
    "grpc.max_receive_message_length": LARGEST_ANSWER,
    // A proxy is for the world outside; a service on this machine or in this shop is called by its address.
    "grpc.enable_http_proxy": 0,
  });
  const usual = access.deadlineSeconds ?? USUAL_DEADLINE_SECONDS;
  const metadata = new grpc.Metadata();
  if (access.token !== undefined) {
    metadata.set("authorization", `Bearer ${access.token}`);
  }

  return {
    address,
    deadlineSeconds: usual,
    close: () => client.close(),
    call: <Answer>(method: string, request: object, deadlineSeconds = usual) =>
      new Promise<Answer>((resolve, reject) => {
        const definition = definitionOf<object, Answer>(method);
        client.makeUnaryRequest(
          definition.path,
          definition.requestSerialize,
          definition.responseDeserialize,
          request,
          metadata.clone(),
          { deadline: Date.now() + deadlineSeconds * 1000 },
          (refused, answer) => (refused ? reject(told(refused, address)) : resolve(answer!)),
        );
      }),
    many: <Answer>(method: string, request: object, deadlineSeconds = usual) => {
      const { path, requestSerialize, responseDeserialize } = definitionOf<object, Answer>(method);
      return client.makeServerStreamRequest(path, requestSerialize, responseDeserialize, request, metadata.clone(), {
        deadline: Date.now() + deadlineSeconds * 1000,
      });
    },
    stream: <Request, Answer>(method: string) => {
      const { path, requestSerialize, responseDeserialize } = definitionOf<Request, Answer>(method);
      return client.makeBidiStreamRequest(path, requestSerialize, responseDeserialize, metadata.clone());
    },
  };
}

function definitionOf<Request, Answer>(method: string): grpc.MethodDefinition<Request, Answer> {
  const [service = "", name = ""] = method.split("/");
  const found = loaded()[service] as grpc.ServiceDefinition | undefined;
  const definition = found?.[name];
  if (definition === undefined) {
    throw new FlushbackError("UNIMPLEMENTED", [`The contract that this package brings along has no ${method}.`]);
  }

  return definition as unknown as grpc.MethodDefinition<Request, Answer>;
}

function addressOf(address: string): URL {
  const url = URL.canParse(address) ? new URL(address) : undefined;
  if (url === undefined || !/^https?:$/.test(url.protocol) || !/:\d+$/.test(address.replace(/\/$/, ""))) {
    throw new TypeError(`'${address}' is not the address of a service: write http://host:port or https://host:port.`);
  }

  return url;
}

function targetOf(url: URL): string {
  // The port that belongs to a scheme is not in the URL.
  return `${url.hostname}:${url.port || (url.protocol === "https:" ? "443" : "80")}`;
}

function refuseWhatDoesNotGo(url: URL, access: Access): void {
  if (url.protocol === "https:") {
    return;
  }

  if (access.ca ?? access.certificate ?? access.key) {
    throw new TypeError(`Certificates have no use with ${url.origin}, which is called without TLS; write https://.`);
  }

  if (access.token !== undefined && !/^(localhost|127\..*|\[::1\])$/.test(url.hostname)) {
    throw new TypeError(`The token would travel in the clear to ${url.origin}; write https://.`);
  }
}

function credentialsFor(url: URL, access: Access): grpc.ChannelCredentials {
  const bytes = (file?: string | URL) => (file === undefined ? null : readFileSync(file));
  return url.protocol === "https:"
    ? grpc.credentials.createSsl(bytes(access.ca), bytes(access.key), bytes(access.certificate))
    : grpc.credentials.createInsecure();
}
