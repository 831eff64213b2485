import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { basename, join, relative } from 'node:path'
import { benchmarkTools, bringBrowser, bringTools, documentTools } from './machine-tools.mjs'
import { root, runNode, say } from './running.mjs'

const tool = (...path) => join(root, 'node_modules', ...path)
const results = join(root, '.built', 'results', 'tests.json')

/** Runs the tests of the named projects, together so that both cores are busy to the end. */
function vitest(projects, words) {
  return runNode([
    ...[tool('vitest', 'vitest.mjs'), 'run', '--config', 'build/vitest.config.ts'],
    ...projects.map((project) => `--project=${project}`),
    ...['--reporter=default', '--reporter=json', `--outputFile.json=${results}`, ...words],
  ])
}

/** Projects of the test runner: what each holds. */
const projects = { inside: 'unit, record, door and report tests', pages: 'browser tests' }

/** The steps of `npm test` before the tests themselves, cheapest first. */
const steps = {
  types: { what: 'types', act: () => runNode([tool('typescript', 'lib', 'tsc.js'), '-p', '.']) },
  lint: {
    what: 'lint and format',
    act: () =>
      runNode([
        tool('@biomejs', 'biome', 'bin', 'biome'),
        ...['check', '--config-path=build/lint-rules.json', '--error-on-warnings', '.'],
      ]),
  },
  house: { what: 'rules of the house', act: () => runNode([join(root, '.built', 'house-rules.mjs'), root]) },
  unused: {
    what: 'unused files, exports and dependencies',
    act: () => runNode([tool('knip', 'bin', 'knip.js'), '--config', 'build/knip.json']),
  },
}

/** One step for the projects that are wanted. */
function testsOf(wanted) {
  const named = Object.keys(projects).filter((name) => wanted.includes(name))
  if (named.length === 0) return []
  return [{ what: named.map((name) => projects[name]).join('; '), act: (words) => vitest(named, words) }]
}

/** Adds up what the test runner wrote down, and keeps what it said of the tests that failed. */
function countTests() {
  const sum = { passed: 0, failed: 0, skipped: 0, faults: [] }
  if (!existsSync(results)) return sum
  const said = JSON.parse(readFileSync(results, 'utf8'))
  sum.passed += said.numPassedTests
  sum.failed += said.numFailedTests
  sum.skipped += said.numPendingTests + said.numTodoTests
  for (const { name, status, message, assertionResults } of said.testResults) {
    const failed = assertionResults.filter((test) => test.status === 'failed')
    for (const test of failed) sum.faults.push(faultOf(name, test.fullName, test.failureMessages.join('\n')))
    if (status === 'failed' && failed.length === 0) sum.faults.push(faultOf(name, 'as a whole', message))
  }
  return sum
}

const LINES_OF_A_FAULT = 10

const faultOf = (file, title, message) =>
  [`${relative(root, file)}: ${title}`, ...message.split('\n').slice(0, LINES_OF_A_FAULT)].join('\n    ')

/**
 * Runs all steps, or those named: `npm test -- types house`. Words after the names go to the test runner:
 * `npm test -- inside tests/doors`. Every step runs even when one before it failed; the end says which.
 */
export async function runTests(words) {
  const known = [...Object.keys(steps), ...Object.keys(projects)]
  const named = known.filter((name) => words.includes(name))
  const chosen = named.length > 0 ? named : known
  const rest = words.filter((word) => !known.includes(word))
  rmSync(join(root, '.built', 'results'), { recursive: true, force: true })
  mkdirSync(join(root, '.built', 'results'), { recursive: true })
  if (chosen.includes('inside') || chosen.includes('pages')) await bringTools(documentTools)
  if (chosen.includes('pages')) await bringBrowser()

  const table = []
  for (const { what, act } of [...chosen.flatMap((name) => steps[name] ?? []), ...testsOf(chosen)]) {
    say(`\n== ${what}`)
    const began = Date.now()
    const code = await act(rest)
    table.push({ what, seconds: (Date.now() - began) / 1000, good: code === 0 })
  }
  say('')
  const { passed, failed, skipped, faults } = countTests()
  // What failed is said once more at the end, where it is looked for.
  for (const fault of faults) say(`FAILED  ${fault}\n`)
  for (const { what, seconds, good } of table) {
    say(`${good ? 'passed' : 'FAILED'}  ${seconds.toFixed(1).padStart(6)} s  ${what}`)
  }
  const allGood = table.every(({ good }) => good)
  if (passed + failed > 0) {
    process.stdout.write(`tests: ${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}\n`)
  }
  return allGood ? 0 : 1
}

/** Bundles the runner of the benchmarks and every module it measures, and runs it. */
export async function runBenchmarks(words) {
  await bringTools(benchmarkTools)
  const { bundle, bundleCompiled, filesUnder } = await import('./bundling.mjs')
  const folder = join(root, '.built', 'benchmarks')
  rmSync(folder, { recursive: true, force: true })
  await bundle('tests/benchmarks/run.ts', join(folder, 'run.mjs'))
  const sources = filesUnder('tests/benchmarks', /\.bench\.ts$/)
  for (const source of sources) await bundle(source, join(folder, benchmarkName(source)))
  for (const source of filesUnder('tests/benchmarks', /-child\.ts$/)) {
    await bundleCompiled(source, join(folder, basename(source, '.ts')))
  }
  const { browserForTests } = await import(join(root, '.built', 'test-browser.mjs'))
  return runNode(['--expose-gc', join(folder, 'run.mjs'), ...words], {
    env: { WITNESSMARK_TEST_BROWSER: browserForTests() },
  })
}

const benchmarkName = (source) => source.replace('tests/benchmarks/', '').replaceAll('/', '-').replace(/\.ts$/, '.mjs')
