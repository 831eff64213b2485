import { type ChangeInput, type ChangingName, change, problemOf } from '../../store/ask.ts'
import { useRecordStore } from '../../store/record-store.ts'

/** Does one change that has no form of its own; a problem is shown at the head of the working area. */
export function act<N extends ChangingName>(name: N, input: ChangeInput<N>): void {
  change(name, input).catch((thrown: unknown) => {
    useRecordStore.setState({ problem: problemOf(thrown) })
  })
}
