/** Words of the counting page that a phone at the press shows, and of the desk that shares its count. */
export const away = {
  title: 'Count at the press',
  code: 'Code that the desk shows',
  enter: 'Let me in',
  wrong: 'That code does not open. Each one lets in a single device: look at the desk for the newest.',
  waiting: 'Waiting for the desk to show its runs …',
  handedOver: 'The desk has every tap.',
  toHandOver: (n: number) => (n === 1 ? '1 tap is still only on this device.' : `${n} taps are still only on this device.`),
  notPrivate: 'Not private: runs, sheets and the count go over this network without encryption.',
  keepOn: 'Set this device to keep its screen on.',
  notKept: 'This browser keeps nothing: a tap is lost if the page goes before the desk has it.',
  shareTitle: 'Count on a phone, too',
  shareText: (address: string, code: string) => `Let it read the square, or open ${address} there and type ${code}.`,
  shareQr: 'Square code with the address of the counting page',
  devices: (n: number) =>
    n === 0 ? 'No other device counts yet.' : n === 1 ? '1 other device was let in.' : `${n} other devices were let in.`,
  gone: 'The count is no longer shared: the program that shared it was ended. Every tap stays where it was made.',
  guard: 'Two quick taps count once',
};
