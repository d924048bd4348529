// A service of the test: it refuses the first calls and then passes them on to one that answers.

import * as grpc from "@grpc/grpc-js";

const asIs = (bytes) => bytes;

/** Starts it in front of another; `calls` counts. */
export async function startMoody(behind, { refusals, pushbackMs }) {
  const through = new grpc.Client(new URL(behind).host, grpc.credentials.createInsecure());
  const path = "/flushback.v1.ProfileChecker/Check";
  const server = new grpc.Server();
  const moody = { calls: 0 };
  server.addService(
    {
      check: {
        path,
        requestStream: false,
        responseStream: false,
        requestSerialize: asIs,
        requestDeserialize: asIs,
        responseSerialize: asIs,
        responseDeserialize: asIs,
      },
    },
    {
      check: (call, answer) => {
        moody.calls += 1;
        if (moody.calls > refusals) {
          through.makeUnaryRequest(path, asIs, asIs, call.request, answer);
          return;
        }

        const metadata = new grpc.Metadata();
        if (pushbackMs !== undefined) metadata.set("grpc-retry-pushback-ms", `${pushbackMs}`);
        answer({ code: grpc.status.UNAVAILABLE, details: "Not now.", metadata });
      },
    },
  );
  const port = await new Promise((resolve, reject) =>
    server.bindAsync("127.0.0.1:0", grpc.ServerCredentials.createInsecure(), (fault, bound) =>
      fault ? reject(fault) : resolve(bound),
    ),
  );
  return Object.assign(moody, {
    address: `http://127.0.0.1:${port}`,
    close: () => {
      server.forceShutdown();
      through.close();
    },
  });
}
