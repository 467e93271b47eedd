/** Pages and files of the packet. */
export const packet = {};
