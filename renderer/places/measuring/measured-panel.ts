/** Choice of a form where a measurement belongs to no panel. */
export const wholeCar = 'whole car'

/** The panel a form's choice means; null for the whole car. */
export const panelOf = (choice: string): string | null => (choice === wholeCar ? null : choice)

/** The choice of a form for a panel; the whole car for null. */
export const choiceOf = (panelId: string | null): string => panelId ?? wholeCar
