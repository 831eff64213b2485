const shown: Readonly<Record<string, string>> = {
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
  Escape: 'Esc',
  Enter: 'Enter',
  Delete: 'Del',
}

/** A key as it stands on the keyboard: `Ctrl+Z` is one cap, `L 1` is two. Decoration: the control beside it has the name. */
export function KeyCap({ keys }: { readonly keys: string }) {
  return (
    <span className="key-caps" aria-hidden="true">
      {keys.split(' ').map((key) => (
        <kbd className="key-cap" key={key}>
          {key
            .split(/(?<=.)\+/)
            .map((part) => shown[part] ?? part)
            .join(' ')}
        </kbd>
      ))}
    </span>
  )
}
