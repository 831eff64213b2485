import { BaseSequencer, type TestSpecification } from 'vitest/node'

/** Files of tests that take longest, longest first, as measured; with two at a time, none of them is left for the end. */
const longest = [
  'tests/pages/pictures.test.ts',
  'tests/pages/places.test.ts',
  'tests/pages/survey.test.ts',
  'tests/pages/look-next.test.ts',
  'tests/pages/hostile.test.ts',
  'tests/pages/keys.test.ts',
  'tests/pages/sheet-desk.test.ts',
  'tests/figures/body-ranges.test.ts',
  'tests/figures/body-trays/inner-sheets.test.ts',
  'tests/record/durability.test.ts',
  'tests/analysis/coating/rank-calibration.test.ts',
  'tests/report/plain-shaping.test.ts',
]

/**
 * Begins the browser tests first and of each project the long files first, so that no single one is waited for at the end;
 * a worker goes on to the next file of its project with all modules read.
 */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId, project }: TestSpecification) => {
      const place = longest.findIndex((file) => moduleId.endsWith(file))
      return (project.name === 'pages' ? 0 : longest.length + 1) + (place === -1 ? longest.length : place)
    }
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b))
  }
}
