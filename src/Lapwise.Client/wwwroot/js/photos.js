// Photos: made small here, which also drops everything in the file but the picture; kept on the device; sent by themselves.
(() => {
  const longestSide = 1600, mostBytes = 900_000;
  const { use } = lapwise.cupboard;
  const shown = new Map();

  async function small(file) {
    const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
    const scale = Math.min(1, longestSide / Math.max(picture.width, picture.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    const pen = canvas.getContext("2d");
    // A picture with holes is laid on white.
    pen.fillStyle = "#fff";
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    for (let quality = 0.82; quality > 0.2; quality -= 0.15) {
      const blob = await new Promise(done => canvas.toBlob(done, "image/jpeg", quality));
      if (blob && blob.size <= mostBytes) return blob;
    }
    throw new Error("too large");
  }

  const hexOf = bytes => [...new Uint8Array(bytes)].map(b => b.toString(16).padStart(2, "0")).join("");

  lapwise.photos = {
    /** Takes what was chosen in the field. Each answer is a photo's id, or "!unreadable", "!full", "!refused". */
    async take(fieldId) {
      const field = document.getElementById(fieldId);
      const answers = [];
      for (const file of [...field.files]) {
        let blob;
        try { blob = await small(file); } catch { answers.push("!unreadable"); continue; }
        const id = hexOf(await crypto.subtle.digest("SHA-256", await blob.arrayBuffer()));
        try {
          await use("photos", "readwrite", s => s.put(blob, id));
          await use("photosToSend", "readwrite", s => s.put([""], id));
          answers.push(id);
        } catch (e) { answers.push(e?.name === "QuotaExceededError" ? "!full" : "!refused"); }
      }
      field.value = "";
      return answers;
    },
    /** Sends what the server does not have; how many are left. */
    async send() {
      let ids = [];
      try { ids = await use("photosToSend", "readonly", s => s.getAllKeys()); } catch { return 0; }
      let left = ids.length;
      for (const id of ids) {
        try {
          const blob = await use("photos", "readonly", s => s.get(id));
          if (blob && !(await fetch("api/photos/" + id, { method: "PUT", body: blob, headers: { "Content-Type": "image/jpeg" } })).ok) break;
          await use("photosToSend", "readwrite", s => s.delete(id));
          left--;
        } catch { break; }
      }
      return left;
    },
    /** The address of a photo for a picture in the page: from the device, else fetched and kept; "" when neither has it. */
    async address(id) {
      if (shown.has(id)) return shown.get(id);
      let blob = null;
      try { blob = await use("photos", "readonly", s => s.get(id)); } catch { /* ask the server */ }
      if (!(blob instanceof Blob)) {
        try {
          const answer = await fetch("api/photos/" + id);
          if (!answer.ok) return "";
          blob = await answer.blob();
          await use("photos", "readwrite", s => s.put(blob, id)).catch(() => { /* shown without being kept */ });
        } catch { return ""; }
      }
      const address = URL.createObjectURL(blob);
      shown.set(id, address);
      return address;
    },
  };
  addEventListener("online", () => lapwise.photos.send());
})();
