import type { Coverage } from '../../../shared-types/judgement.ts'
import { walkLayerWords } from '../../../shared-types/words.ts'
import { Section } from '../../parts-of-page/Section.tsx'

/** How much was looked at, layer by layer; what could not be reached is counted apart and never as seen. */
export function CoverageLines({ coverage }: { readonly coverage: readonly Coverage[] }) {
  return (
    <Section head="Looked at" level="column" beside="panels, by layer">
      <dl className="said-list">
        {coverage.map((layer) => (
          <div key={layer.layer}>
            <dt>{walkLayerWords[layer.layer]}</dt>
            <dd>
              <span className="figures">
                {layer.seen} of {layer.all}
              </span>{' '}
              {layer.all === layer.walked ? 'in the walk' : `of this body, ${layer.walked} of them in the walk`}
              <span className="under-line">
                not accessible {layer.notAccessible} · not inspected {layer.all - layer.seen - layer.notAccessible}
              </span>
            </dd>
          </div>
        ))}
      </dl>
    </Section>
  )
}
