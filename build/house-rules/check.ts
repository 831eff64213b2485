import { noCircles, nothingCallsUp, roomsKept } from './import-rules.ts'
import {
  noDefaultExports,
  noLongFiles,
  nothingFromBeside,
  sqlInRecordOnly,
  topAsFixed,
  windowsInDoorsOnly,
} from './place-rules.ts'
import { readSourceTree } from './source-tree.ts'

const rules = [
  roomsKept,
  nothingCallsUp,
  noCircles,
  sqlInRecordOnly,
  windowsInDoorsOnly,
  noDefaultExports,
  noLongFiles,
  nothingFromBeside,
  topAsFixed,
]

const tree = readSourceTree(process.argv[2] ?? process.cwd())
const faults = rules.flatMap((rule) => rule(tree))
for (const { path, line, says } of faults) process.stdout.write(`${path}:${line}: ${says}\n`)
process.stdout.write(`${tree.files.length} files, ${rules.length} rules of the house, ${faults.length} broken\n`)
process.exitCode = faults.length === 0 ? 0 : 1
