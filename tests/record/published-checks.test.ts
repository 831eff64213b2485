import { describe, expect, it } from 'vitest'
import { canonical, sha256 } from '../../electron/record/canonical.ts'

/** The double whose IEEE 754 bits are given, as Appendix B of RFC 8785 writes them. */
const double = (bits: string) => Buffer.from(bits, 'hex').readDoubleBE(0)

describe('canonical JSON', () => {
  it('gives the bytes RFC 8785 prints for its example (sections 3.2.2 to 3.2.4)', () => {
    const input = String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`
    const expected =
      '7b226c69746572616c73223a5b6e756c6c2c747275652c66616c73655d2c226e756d62657273223a5b3333333333333333332e33333333' +
      '3333332c31652b33302c342e352c302e3030322c31652d32375d2c22737472696e67223a22e282ac245c75303030665c6e4127425c225c' +
      '5c5c5c5c222f227d'
    expect(Buffer.from(canonical(JSON.parse(input)), 'utf8').toString('hex')).toBe(expected)
  })

  it('sorts names by UTF-16 code units, as the example of RFC 8785, section 3.2.3', () => {
    const input = String.raw`{"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter Dalet With Dagesh","1":"One","\ud83d\ude00":"Emoji: Grinning Face","\u0080":"Control","\u00f6":"Latin Small Letter O With Diaeresis"}`
    const values = [...canonical(JSON.parse(input)).matchAll(/:"([^"]*)"/g)].map(([, value]) => value)
    expect(values).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ])
  })

  it.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['ffefffffffffffff', '-1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['c340000000000000', '-9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef4f', '999999999999999900000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555554', '333333333.33333325'],
    ['41b3de4355555555', '333333333.3333333'],
    ['41b3de4355555556', '333333333.3333334'],
    ['41b3de4355555557', '333333333.33333343'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('writes the number %s as %s (RFC 8785, Appendix B)', (bits, expected) => {
    expect(canonical(double(bits))).toBe(expected)
  })

  it.each(['7fffffffffffffff', '7ff0000000000000'])('refuses %s, which is no number (RFC 8785, Appendix B)', (bits) => {
    expect(() => canonical(double(bits))).toThrow(
      expect.objectContaining({ problem: { code: 'input-refused', message: expect.any(String) } }),
    )
  })
})

describe('SHA-256', () => {
  it.each([
    ['abc', 'abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad', 'NIST examples for FIPS 180-4'],
    [
      '448 bits',
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
      'NIST examples for FIPS 180-4',
    ],
    [
      'a million a',
      'a'.repeat(1_000_000),
      'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0',
      'FIPS 180-2, appendix B.3',
    ],
    [
      'nothing',
      '',
      'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
      'NIST CAVP, SHA256ShortMsg, Len = 0',
    ],
  ])('of %s is as published', (_, message, expected) => {
    expect(sha256(message)).toBe(expected)
    expect(sha256(message.slice(0, 7), Buffer.from(message.slice(7)))).toBe(expected)
  })
})
