/** The numeric kernel as WebAssembly in base 64. */
export function numericKernel(): Promise<string>
