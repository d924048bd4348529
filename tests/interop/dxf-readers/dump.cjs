// Two independent readers of DXF for the tests, from npm: what each of them sees in a file, in one form.
//
//     node dump.cjs dxf-parser FILE
//     node dump.cjs dxf FILE

const fs = require("node:fs");

const [reader, file] = process.argv.slice(2);
const text = fs.readFileSync(file, "utf8");

// Neither resolves the format's escapes for letters outside ASCII.
const unescaped = (value) => value.replace(/\\U\+([0-9A-F]{4})/gi, (_, hex) => String.fromCharCode(parseInt(hex, 16)));
const vertices = (entity) => entity.vertices.map((v) => [v.x, v.y, v.bulge ?? 0]);

const readers = {
  "dxf-parser"() {
    const DxfParser = require("dxf-parser");
    const drawing = new DxfParser().parseSync(text);
    return {
      units: drawing.header.$INSUNITS,
      layers: Object.values(drawing.tables.layer.layers).map((l) => ({ name: l.name, colour: l.colorIndex })),
      entities: drawing.entities.map((e) => ({
        type: e.type,
        layer: e.layer,
        ...(e.vertices && { vertices: vertices(e), closed: Boolean(e.shape) }),
        ...(e.position && { at: [e.position.x, e.position.y] }),
        ...(e.startPoint && { at: [e.startPoint.x, e.startPoint.y], text: unescaped(e.text), height: e.textHeight }),
        ...(e.center && { centre: [e.center.x, e.center.y], radius: e.radius }),
      })),
    };
  },
  dxf() {
    const { Helper } = require("dxf");
    const drawing = new Helper(text).parsed;
    return {
      units: drawing.header.insUnits,
      layers: Object.values(drawing.tables.layers).map((l) => ({ name: l.name, colour: l.colorNumber })),
      entities: drawing.entities.map((e) => ({
        type: e.type,
        layer: e.layer,
        ...(e.vertices && { vertices: vertices(e), closed: Boolean(e.closed) }),
        ...((e.type === "POINT" || e.type === "TEXT") && { at: [e.x, e.y] }),
        ...(e.type === "TEXT" && { text: unescaped(e.string), height: e.textHeight }),
        ...(e.type === "CIRCLE" && { centre: [e.x, e.y], radius: e.r }),
      })),
    };
  },
};

process.stdout.write(JSON.stringify(readers[reader]()));
