const { inflateRawSync } = require('node:zlib')

/** What the package `tiny-inflate` does: unpacks raw deflate data (RFC 1951) into an array of the size that comes out. */
module.exports = (packed, unpacked) => {
  unpacked.set(inflateRawSync(packed))
  return unpacked
}
