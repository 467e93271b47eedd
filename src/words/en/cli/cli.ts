import type { ListText, NameText, NumberText, SayingText } from '../../text.ts';

/** The command line: how it is called, what is typed, files and folders. */
export const cli = {
  // Problems as lines.
  error: ({ problem }: { problem: NameText }) => `error: ${problem}`,
  warning: ({ problem }: { problem: NameText }) => `warning: ${problem}`,
  note: ({ problem }: { problem: NameText }) => `note: ${problem}`,
  unforeseen: 'Something went wrong that should not have. Please report it, with what you typed and what follows:',

  // The call.
  noSuchCommand: ({ command }: { command: NameText }) => `Laydown has no command “${command}”.`,
  seeCommands: '“laydown --help” lists them all.',
  noSuchLanguage: ({ language }: { language: NameText }) => `Laydown does not speak “${language}”.`,
  chooseLanguage: ({ all }: { all: ListText }) => `Choose ${all}.`,
  noSuchOption: ({ command }: { command: NameText }) => `“${command}” has no such option.`,
  itTakes: ({ all }: { all: ListText }) => `It takes ${all}.`,
  quoteMinus: 'Put numbers that belong together in quotes: "62 -38.5 12".',
  takesNoValue: 'It takes no value.',
  writeAlone: ({ option }: { option: NameText }) => `Write ${option} alone.`,
  valueMissing: 'It needs a value.',
  writeAs: ({ option }: { option: SayingText }) => `Write ${option}.`,
  optionAndValue: ({ option }: { option: NameText }) => `${option} VALUE`,
  optionNo: ({ option, n }: { option: NameText; n: number }) => `the option ${option}, number ${n}`,

  // Which job, which layer, which file.
  whatIsDone: 'What is done?',
  onlyFolders: 'Only a job in a folder can be marked here.',
  markAtBench: 'Mark a .laydown file at the bench.',
  whichFolder: 'Which folder?',
  nameFolder: 'Name a new folder for the job.',
  jobExists: 'There is a job in this folder already.',
  noSuchField: ({ field }: { field: NameText }) => `The job has no field “${field}”.`,
  fieldsAre: ({ all }: { all: ListText }) => `Its fields: ${all}.`,
  whichJob: 'Which job?',
  nameJob: 'Name a folder with job.json in it, or a .laydown file.',
  cannotOpen: 'The job can’t be opened any more.',
  whichLayer: 'Which layer?',
  nameOneOf: ({ all }: { all: ListText }) => `Name one of these: ${all}.`,
  useOneOf: ({ all }: { all: ListText }) => `Use ${all}.`,
  writeCorners: 'Write four corners in pixels: "120,80 2900,95 2880,3900 130,3880".',
  whichPhoto: 'Which photograph?',
  namePicture: 'Name a JPEG, PNG, WebP or TIFF file.',

  // Numbers, colours, amounts, readings.
  cannotUse: ({ text }: { text: NameText }) => `“${text}” can’t be used here.`,
  numberFromTo: ({ low, high }: { low: NumberText; high: NumberText }) => `Give a number from ${low} to ${high}.`,
  wholeFromTo: ({ low, high }: { low: NumberText; high: NumberText }) => `Give a whole number from ${low} to ${high}.`,
  notLab: ({ text }: { text: NameText }) => `“${text}” is not a Lab colour.`,
  giveLab: 'Give three numbers, L, a and b, in quotes: "62 -38.5 12".',
  notAmount: ({ text }: { text: NameText }) => `“${text}” is not an amount.`,
  writeAmounts: 'Write ink=grams, several with commas: rockpool=70,clear-base=30.',
  noPatch: 'There is no reading in this file.',
  otherFileOrLab: 'Choose another, or type the Lab in.',

  // Reading from the disk.
  nothingHere: 'There is nothing here.',
  noSuchFile: 'There is no such file.',
  checkName: 'Check the name and try again.',
  cannotRead: ({ why }: { why: SayingText }) => `It can’t be read: ${why}.`,
  folderTooLarge: 'The folder holds far more than a job does.',
  giveJobFolder: 'Give the folder of one job, with only its drawings and pictures in it.',

  // Writing to it.
  fileExists: 'There is a file of that name already.',
  otherNameOrReplace: 'Choose another name, or say --replace.',
  folderExists: 'There is something here already.',
  otherFolderOrReplace: 'Choose another folder with --out, or say --replace to put the new one in its place.',
  foreignFiles: ({ files }: { files: ListText }) => `The folder holds files that Laydown did not make: ${files}.`,
  otherFolder: 'Choose another folder; nothing was touched.',
  folderStandsHere: 'A folder of that name stands here.',
  fileStandsHere: 'A file of that name stands here.',
  linkStandsHere: 'This is a link to another place, and links are not followed when something is written.',
  otherName: 'Choose another name.',
  intoTheJob: 'This is the job’s own folder, or lies in it; what is put there would become part of the job.',
  folderHasJob: 'There is a job in this folder.',
  changedFiles: ({ files }: { files: ListText }) => `Something was changed here since Laydown wrote it: ${files}.`,
  otherKind: 'Laydown wrote something else here.',
  clearedLeftOver: ({ file }: { file: NameText }) =>
    `A Laydown that was stopped had left half of something behind; it was cleared away: ${file}`,
  putBack: ({ folder }: { folder: NameText }) =>
    `A Laydown was stopped while it replaced this folder; it was put back as it was: ${folder}`,
  keptDated: ({ folder }: { folder: NameText }) => `What was there before is kept until the next time: ${folder}`,
  cannotWrite: ({ why }: { why: SayingText }) => `It could not be written: ${why}.`,
  otherPlace: 'Choose another place.',
  nothingHalfWritten: 'Nothing was left half-written. Make room, or choose another folder with --out.',
  diskFull: 'the disk is full',
  diskReadOnly: 'the disk can only be read',
  forbidden: 'you may not write or read here',
  fileInTheWay: 'a file stands where a folder is needed',
  folderInTheWay: 'a folder stands where a file is needed',
  noFolder: 'there is no such folder',
  diskFails: ({ what }: { what: NameText }) => `the system answers “${what}”`,

  // What was written.
  written: ({ file }: { file: NameText }) => `Written: ${file}`,

  // Sharing the count.
  shareCode: ({ address, code }: { address: NameText; code: NameText }) =>
    `To count at the press: let a phone read the square above, or open ${address} there and type ${code}. The code lets one device in; the next one follows.`,
  shareOpen:
    'Not private: names of the print, its runs and sheets, and the count go over this network without encryption. Share on a network of your own. Ctrl-C ends it.',
};
