// An independent offset of polygons for the tests, from npm: reads jobs as JSON, writes the polygons of each.
//
//     node offset.mjs < jobs.json
//
// A job has "paths" (rings of [x, y], the material on their left), "steps" (distances to offset by, one after another,
// positive outward), and the arc tolerance and decimals to work with.

import { EndType, FillRule, JoinType, inflatePathsD, unionD } from "clipper2-ts";
import { readFileSync } from "node:fs";

const miterLimit = 2;

const run = ({ paths, steps, arcToleranceMm, decimals }) => {
  let rings = paths.map((ring) => ring.map(([x, y]) => ({ x, y })));
  for (const step of steps) {
    rings = inflatePathsD(rings, step, JoinType.Round, EndType.Polygon, miterLimit, decimals, arcToleranceMm);
  }
  return unionD(rings, [], FillRule.NonZero, decimals).map((ring) => ring.map(({ x, y }) => [x, y]));
};

process.stdout.write(JSON.stringify(JSON.parse(readFileSync(0, "utf8")).map(run)));
