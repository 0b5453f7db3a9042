// The camera: frames of a megapixel, three a second, are read by the station until one has a code. A scanner's keys and a photo come first.
(() => {
    "use strict";
    const [video, said, start, photo, found, text] =
        ["video", "camera-said", "camera", "photo", "found", "text"].map(id => document.getElementById(id));
    const canvas = document.createElement("canvas");
    const pixels = 1000000;
    const between = 333; // ms
    let stream = null;
    let isAsking = false;
    let isReadingPhoto = false;

    const isOtherwiseTold = () => isReadingPhoto || text.value !== "";
    const say = sentence => { said.textContent = sentence; };
    const send = (path, body) => fetch(path, {
        method: "POST",
        headers: { "X-Tagend-Token": window.tagend.token, "Content-Type": body.type || "application/octet-stream", "HX-Request": "true" },
        body,
    });
    const stop = () => {
        stream?.getTracks().forEach(track => track.stop());
        stream = null;
        video.hidden = true;
        start.textContent = "Use the camera";
    };

    const show = html => {
        stop();
        say("");
        found.innerHTML = html;
        window.htmx.process(found);
        document.body.classList.toggle("is-held", found.querySelector(".held") !== null);
        document.body.classList.add("has-found");
        const heading = found.querySelector("h2");
        if (heading) {
            heading.tabIndex = -1;
            heading.focus({ preventScroll: true });
        }

        found.scrollIntoView({ block: "start" });
    };

    const frame = () => new Promise(resolve => {
        const scale = Math.min(1, Math.sqrt(pixels / (video.videoWidth * video.videoHeight)));
        [canvas.width, canvas.height] = [Math.round(video.videoWidth * scale), Math.round(video.videoHeight * scale)];
        canvas.getContext("2d").drawImage(video, 0, 0, canvas.width, canvas.height);
        canvas.toBlob(resolve, "image/jpeg", 0.85);
    });

    const follow = async mine => {
        while (stream === mine) {
            const begun = performance.now();
            try {
                const picture = video.videoWidth > 0 && !isOtherwiseTold() ? await frame() : null;
                const answer = picture && await send("/scan/frame", picture);
                const seen = answer?.status === 200 ? await answer.text() : "";
                if (stream !== mine) {
                    return;
                }

                if (seen && !isOtherwiseTold()) {
                    navigator.vibrate?.(100);
                    show(seen);
                    return;
                }

                if (!isOtherwiseTold()) {
                    say(answer?.ok === false ? "The station cannot read this picture." : "Hold the tag so that it fills half of the picture.");
                }
            } catch {
                say("The station does not answer; it is tried again.");
            }

            await new Promise(resolve => setTimeout(resolve, Math.max(0, between - (performance.now() - begun))));
        }
    };

    const watch = async () => {
        if (isAsking) {
            return;
        }

        if (stream) {
            stop();
            say("");
            return;
        }

        if (!navigator.mediaDevices) {
            say("The browser lends a camera only to a page from this machine or over HTTPS: take a photo instead.");
            return;
        }

        isAsking = true;
        found.replaceChildren();
        document.body.classList.remove("is-held", "has-found");
        try {
            stream = await navigator.mediaDevices.getUserMedia({
                video: { facingMode: "environment", width: { ideal: 1280 }, height: { ideal: 720 } },
            });
        } catch (fault) {
            say(fault.name === "NotAllowedError"
                ? "The camera is not allowed for this page: allow it in the browser's settings, or take a photo instead."
                : "There is no camera that can be used: take a photo instead, or use a scanner.");
            return;
        } finally {
            isAsking = false;
        }

        if (found.childElementCount > 0) {
            stop(); // a tag came from elsewhere while the camera was asked for: what it says stays
            return;
        }

        const mine = stream;
        video.srcObject = mine;
        video.hidden = false;
        start.textContent = "Stop the camera";
        say("Hold the tag so that it fills half of the picture.");
        await video.play();
        follow(mine); // nothing, where a tag came from elsewhere meanwhile
    };

    start.addEventListener("click", watch);
    photo.addEventListener("change", async () => {
        const [file] = photo.files;
        if (!file) {
            return;
        }

        stop();
        say("The photo is being read.");
        isReadingPhoto = true;
        try {
            show(await (await send("/scan/photo", file)).text());
        } catch {
            say("The station does not answer: try the photo again.");
        } finally {
            isReadingPhoto = false;
        }

        photo.value = "";
    });
    found.addEventListener("click", event => {
        if (event.target.closest("[data-again]")) {
            found.replaceChildren();
            document.body.classList.remove("is-held", "has-found");
            watch();
        }
    });
    document.addEventListener("htmx:afterSwap", event => {
        if (event.target === found) {
            text.value = "";
            show(found.innerHTML);
        }
    });

    // A scanner is a keyboard: on a desk its field waits for it.
    if (window.matchMedia("(pointer: fine)").matches) {
        text.focus();
    }

    // It wakes by itself where it may, but not over a tag that a scanner sent before the browser said so.
    navigator.permissions?.query({ name: "camera" }).then(camera => camera.state === "granted" && found.childElementCount === 0 && watch()).catch(() => { /* asked with the first tap */ });
})();
