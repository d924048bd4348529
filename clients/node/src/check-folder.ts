/**
 * Checks every drawing in a folder and prints a table: an example of the use of flushback.ts.
 *
 *     node dist/check-folder.js FOLDER [URL]
 *
 * Readings are in thousandths of an inch and millimetres. Ends with 0 when every pair is clean, 1 when there are
 * findings above a note, 2 when a drawing was refused, 3 when no service answered.
 */

import { readdir } from "node:fs/promises";
import { basename, join } from "node:path";

import { connect, FlushbackError, type CheckReport } from "./flushback.js";

const THOU_MM = 0.0254;
const STOPS = ["STOP_OPEN", "STOP_HALF_STOP", "STOP_CLOSED"] as const;

/** The dial at a stop, such as +5.0 (+0.127), or a stroke where the knife has none. */
function reading(report: CheckReport, stop: (typeof STOPS)[number]): string {
  const found = report.stops.find((candidate) => candidate.stop === stop);
  const signed = (value: number, digits: number) => (value < 0 ? "" : "+") + value.toFixed(digits);
  if (found === undefined) {
    return "-";
  }

  return found.rests ? `${signed(found.liftMm / THOU_MM, 1)} (${signed(found.liftMm, 3)})` : "no rest";
}

function row(name: string, report: CheckReport): string[] {
  const above = report.findings.filter((finding) => finding.severity !== "SEVERITY_NOTE").length;
  return [name, ...STOPS.map((stop) => reading(report, stop)), above === 0 ? "clean" : `${above}`];
}

function printTable(rows: string[][]): void {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((cells) => cells[column]?.length ?? 0)));
  for (const cells of rows) {
    console.log(cells.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join("  ").trimEnd());
  }
}

async function main(folder: string | undefined, address: string | undefined): Promise<number> {
  if (folder === undefined) {
    console.error("Name a folder with drawings: node dist/check-folder.js FOLDER [URL].");
    return 2;
  }

  const drawings = (await readdir(folder)).filter((name) => name.endsWith(".dxf")).map((name) => join(folder, name));
  const rows: string[][] = [];
  const refused: string[] = [];
  const service = connect(address);
  try {
    // Answers come as they are ready, in any order.
    for await (const { item, answer, error } of service.checkMany(drawings)) {
      if (error) refused.push(`${basename(item)}: ${error.message}`);
      else rows.push(row(basename(item), answer.report!));
    }
  } catch (nobody) {
    if (!(nobody instanceof FlushbackError)) {
      throw nobody;
    }

    console.error(nobody.message);
    return 3;
  } finally {
    service.close();
  }

  printTable([["drawing", "open, thou (mm)", "half stop", "closed", "findings"], ...rows.sort()]);
  refused.sort().forEach((sentence) => console.error(sentence));
  return refused.length > 0 ? 2 : Number(rows.some((cells) => cells.at(-1) !== "clean"));
}

process.exitCode = await main(process.argv[2], process.argv[3]);
