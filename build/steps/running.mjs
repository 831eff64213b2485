import { spawn } from 'node:child_process'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Top folder of the project. */
export const root = resolve(dirname(fileURLToPath(import.meta.url)), '..', '..')

/** Folder the user stood in: npm changes to the project's folder and tells the former one. */
export const whereAsked = process.env.INIT_CWD ?? process.cwd()

/** Says what is being done. On the error stream, so that what a command prints can be piped. */
export const say = (line) => process.stderr.write(`${line}\n`)

/** Runs a program to its end with its streams shown; answers its exit code. */
export function run(program, words, { cwd = root, env = {}, quiet = false } = {}) {
  return new Promise((done, fail) => {
    const child = spawn(program, words, {
      cwd,
      env: { ...process.env, ...env },
      stdio: quiet ? ['ignore', 'ignore', 'pipe'] : ['inherit', 'inherit', 'inherit'],
    })
    let errors = ''
    child.stderr?.on('data', (bytes) => {
      errors += bytes
    })
    const forward = (signal) => child.kill(signal)
    process.on('SIGINT', forward)
    process.on('SIGTERM', forward)
    child.on('error', fail)
    child.on('close', (code, signal) => {
      process.off('SIGINT', forward)
      process.off('SIGTERM', forward)
      if (quiet && code !== 0) process.stderr.write(errors)
      done(code ?? (signal === null ? 1 : 128))
    })
  })
}

export const runNode = (words, options) => run(process.execPath, words, options)

/** Does one long step, saying what it is, that it still runs, and how long it took. */
export async function step(what, act) {
  const began = Date.now()
  const seconds = () => ((Date.now() - began) / 1000).toFixed(1)
  say(`- ${what} ...`)
  const heartbeat = setInterval(() => say(`  still at it after ${seconds()} s: ${what}`), 20_000)
  try {
    return await act()
  } finally {
    clearInterval(heartbeat)
    say(`  ${seconds()} s: ${what}`)
  }
}
