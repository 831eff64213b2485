/** On parts of a drawing whose words are said elsewhere: by the name of a panel, the table or the text alternative. */
export const decoration = { 'aria-hidden': true } as const
