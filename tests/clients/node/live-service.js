// The built service as a process of its own on this machine, for the tests of the client.

import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

export const root = new URL("../../../", import.meta.url);
export const samples = new URL("clients/samples/", root);

const program = fileURLToPath(new URL("artifacts/bin/Flushback.Service/release/Flushback.Service.dll", root));

/** Starts a service; `address` is where it listens, `close` ends it. */
export async function startService({ scheme = "http", args = [] } = {}) {
  const process = spawn("dotnet", [program, "--urls", `${scheme}://127.0.0.1:0`, "--Limits:Seconds=600", ...args]);
  let printed = "";
  const ended = new Promise((resolve) => process.once("exit", resolve));
  const address = await new Promise((resolve, reject) => {
    process.stderr.on("data", (text) => (printed += text));
    process.stdout.on("data", (text) => {
      printed += text;
      const found = /Now listening on: (\S+)/.exec(printed);
      if (found) resolve(found[1]);
    });
    process.once("exit", () => reject(new Error(`The service did not start:\n${printed}`)));
    process.once("error", reject);
  });
  return {
    address,
    close: async () => {
      process.kill();
      await ended;
    },
  };
}
