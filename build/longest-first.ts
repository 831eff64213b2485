import { BaseSequencer, type TestSpecification } from 'vitest/node'

/** Files of tests that take longest, longest first, as measured; with two at a time, none of them is left for the end. */
const longest = [
  'tests/pages/survey.test.ts',
  'tests/pages/places.test.ts',
  'tests/pages/pictures.test.ts',
  'tests/pages/identity-entries.test.ts',
  'tests/pages/sheet-desk.test.ts',
]

/** Begins the long files first, so that no single one is waited for at the end; the others as the runner would. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification) => {
      const place = longest.findIndex((file) => moduleId.endsWith(file))
      return place === -1 ? longest.length : place
    }
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b))
  }
}
