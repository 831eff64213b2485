/** Scheme under which the desktop window finds its page. */
export const WINDOW_SCHEME = 'witnessmark'
/** Where the desktop window's page lives; nothing else of the scheme exists. */
export const WINDOW_ORIGIN = `${WINDOW_SCHEME}://app`
/** Names of the messages between the window's preload and the main process. */
export const windowMessages = { ask: 'witnessmark:ask', event: 'witnessmark:event' } as const
