/** What goes wrong on the page itself, before anything is asked of core. */
export const page = {
  // Keeping
  notKept: 'What lies on the bench is kept nowhere yet, and opening another job takes it away.',
  saveOrOpenAgain: 'Save it as a file first; or open the other job once more to let this one go.',
  versionNotKept: 'This version could not be kept: the browser gives Laydown no room.',
  saveAsFile: 'Save the job as a file instead.',

  // Files
  farTooLarge: 'It holds far more than a job does.',
  chooseJob: 'Choose a .laydown file, or the folder of one job.',
  notADrawing: 'This is neither an SVG nor a DXF drawing.',
  saveAsDrawing: 'Save it as SVG or DXF; photographs go through “Trace a photograph”.',
  largerThan: ({ megabytes }: { megabytes: number }) => `It is larger than ${megabytes} MB.`,
  cutLess: 'Leave out what is not to be cut, and save it again.',
  smallerPhotograph: 'Save it smaller; 12 megapixels are plenty.',
  smallerPicture: 'Save it smaller; a knife follows a quarter of a millimetre.',

  // The picture
  noPicture: 'There is no picture to make stencils of.',
  choosePicture: 'Choose one first.',
  nothingSeparated: 'No stencils have been made of it yet.',
  makeFirst: 'Make them first.',
};
