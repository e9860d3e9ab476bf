/** What a camera is called as long as nobody has named it. */
export const USUAL_CAMERA = 'phone';
