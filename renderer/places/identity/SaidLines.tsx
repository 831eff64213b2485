/** Lines of a name and what is said; what nobody said is called so and never left blank. */
export function SaidLines({ lines }: { readonly lines: readonly (readonly [string, string | null])[] }) {
  return (
    <dl className="said-lines">
      {lines.map(([name, said]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd className={said === null || said === '' ? 'quiet' : ''}>
            {said === null || said === '' ? 'not stated' : said}
          </dd>
        </div>
      ))}
    </dl>
  )
}
