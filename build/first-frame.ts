import { join } from 'node:path'
import { createElement, type FunctionComponent } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { type Plugin, runnerImport } from 'vite'

/** Faces of the words in the first frame; asked for with the style sheet, not only after it was read. */
const facesOfFrame = ['SourceSans3-Regular', 'SourceSans3-SemiBold', 'SourceCodePro-Regular']

/** The first frame as markup, drawn by the program's own components. */
async function drawFrame(top: string): Promise<string> {
  const path = join(top, 'renderer', 'FirstFrame.tsx')
  const { module } = await runnerImport<{ FirstFrame: FunctionComponent }>(path, {
    configFile: false,
    root: top,
    logLevel: 'warn',
  })
  return renderToStaticMarkup(createElement(module.FirstFrame))
}

/**
 * Puts the first frame of the program into the page, so that it is drawn before the program is fetched, and has the faces of
 * its words fetched with the style sheet. Nothing is inline but markup. The program itself is not asked for in advance:
 * fetched beside the faces it keeps them, and so the picture, waiting.
 */
export function firstFrame(top: string): Plugin {
  return {
    name: 'first-frame',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      async handler(page, { bundle }) {
        const files = Object.values(bundle ?? {})
        const faces = facesOfFrame.map((face) => {
          const file = files.find(({ fileName }) => fileName.startsWith(`assets/${face}-`))
          if (file === undefined) throw new Error(`The page has no face ${face}.`)
          return `rel="preload" as="font" type="font/ttf" href="/${file.fileName}"`
        })
        const links = faces.map((link) => `  <link ${link} crossorigin />\n  `)
        return page
          .replace('<script type="module"', '<script type="module" blocking="render"')
          .replace('</head>', `${links.join('')}</head>`)
          .replace('<!--first-frame-->', await drawFrame(top))
      },
    },
  }
}
