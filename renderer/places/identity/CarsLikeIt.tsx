import type { IdentityMore, ProbableBuildView, RarityView } from '../../../shared-types/identity-more.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { weightText } from './weight-words.ts'

const named = (values: readonly { readonly variable: string; readonly value: string }[]): string =>
  values.map(({ variable, value }) => `${variable}: ${value}`).join('; ')

function Rarity({ rarity }: { readonly rarity: RarityView }) {
  return (
    <>
      <p>
        <span className="strong">{rarity.words}</span>
        <span className="under-line">{`Like this: ${named(rarity.like)}.`}</span>
        {rarity.notSettled.length === 0 ? null : (
          <span className="under-line">{`Counted too, but not settled of this car: ${rarity.notSettled.join(', ')}.`}</span>
        )}
      </p>
      <ul className="argument">
        {rarity.accounts.map(({ source, low, high, all, notCounted }) => (
          <li key={source}>
            <span className="figures">{low === high ? low : `${low} to ${high}`}</span>
            {` of ${all}: `}
            <span className="quiet">{source}</span>
            {notCounted.length === 0 ? null : ` It does not count ${notCounted.join(', ')}.`}
          </li>
        ))}
      </ul>
    </>
  )
}

function Build({ build, first }: { readonly build: ProbableBuildView; readonly first: boolean }) {
  const words = named(build.values)
  return (
    <li>
      <span className="figures">{weightText(build.share)}</span>{' '}
      {first ? words : `as the first, but ${words === '' ? 'for what is not listed' : words}`}
    </li>
  )
}

/** How many were built like this car, and the most probable whole builds; what comes after the weights. */
export function CarsLikeIt({ more, waits }: { readonly more: IdentityMore | null; readonly waits: boolean }) {
  if (more === null) return null
  return (
    <Section head="Cars built like it" level="column" beside="every source by itself; nothing multiplied" busy={waits}>
      {more.rarity === null ? (
        <p className="note">Nothing that is counted is settled of this car yet.</p>
      ) : (
        <Rarity rarity={more.rarity} />
      )}
      <details className="by-source">
        <summary>most probable builds</summary>
        <ol className="argument">
          {more.builds.map((build, at) => (
            <Build key={`${build.share} ${named(build.values)}`} build={build} first={at === 0} />
          ))}
        </ol>
        {more.proved ? null : <p className="note">Another build may be as probable as the last of these.</p>}
      </details>
    </Section>
  )
}
