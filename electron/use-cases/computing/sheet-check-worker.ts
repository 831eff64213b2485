import { checkDraft } from '../../sheets/reference/draft-sheet.ts'
import { answerAside } from './answer-aside.ts'
import type { SheetCheckAsked } from './check-sheet-aside.ts'

answerAside(({ draft, known }: SheetCheckAsked) =>
  checkDraft(draft, new Map(known.map((sheet) => [sheet.sheetId, sheet]))),
)
