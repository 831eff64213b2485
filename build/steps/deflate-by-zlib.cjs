const { deflateSync } = require('node:zlib')

/** What the program's packages call of the package `pako`: packs bytes as zlib data (RFC 1950). */
exports.deflate = (bytes) => new Uint8Array(deflateSync(bytes))
