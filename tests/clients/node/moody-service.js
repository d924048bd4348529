// A service of the test: it refuses the first calls and then passes them on to one that answers.

import * as grpc from "@grpc/grpc-js";

const asIs = (bytes) => bytes;

/** A field of bytes or of a message, by the rules of protobuf's encoding. */
const field = (number, content) => Buffer.concat([Buffer.from([(number << 3) | 2, content.length]), content]);

// google.rpc.Status of code 14 with a RetryInfo of a second and a half.
const busy = Buffer.concat([
  Buffer.from([0x08, 14]),
  field(2, Buffer.from("Not now.")),
  field(3, Buffer.concat([
    field(1, Buffer.from("type.googleapis.com/google.rpc.RetryInfo")),
    field(2, field(1, Buffer.from([0x08, 1, 0x10, 0x80, 0xca, 0xb5, 0xee, 0x01]))),
  ])),
]);
export const busySeconds = 1.5;

/**
 * Starts it in front of another; `calls` counts. Of libraries it may also answer the first few items that it has no room,
 * and cut its first stream at an item.
 */
export async function startMoody(behind, { refusals = 0, pushbackMs, busyItems = 0, cutAt }) {
  const through = new grpc.Client(new URL(behind).host, grpc.credentials.createInsecure());
  const path = "/flushback.v1.ProfileChecker/Check";
  const many = `${path}Many`;
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
      checkMany: {
        path: many,
        requestStream: true,
        responseStream: true,
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
      checkMany: (call) => {
        moody.calls += 1;
        const isFirst = moody.calls === 1;
        const stop = () => call.emit("error", { code: grpc.status.UNAVAILABLE, details: "The service is stopping." });
        if (moody.calls <= refusals) {
          stop();
          return;
        }

        const answer = async (item, number) => {
          if (isFirst && number === cutAt) {
            stop();
          } else if (busyItems-- > 0) {
            const itemId = item.subarray(2, 2 + item[1]); // Its first field.
            call.write(Buffer.concat([field(1, itemId), field(2, busy)]));
          } else if (!(isFirst && number > cutAt)) {
            const alone = through.makeBidiStreamRequest(many, asIs, asIs);
            alone.end(item);
            for await (const answered of alone) call.write(answered);
          }
        };
        let [turn, number] = [Promise.resolve(), 0];
        call.on("data", (item) => {
          const mine = number++;
          turn = turn.then(() => answer(item, mine));
        });
        call.on("end", () => turn.then(() => call.end()));
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
