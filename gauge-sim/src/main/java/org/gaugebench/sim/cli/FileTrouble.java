package org.gaugebench.sim.cli;

import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;

/** Why a file could not be read or written, for people: some exceptions name only the file. */
final class FileTrouble {
    private FileTrouble() {}

    static String words(Exception trouble) {
        Throwable root = trouble;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        if (root instanceof AccessDeniedException) {
            return "permission denied";
        }
        if (root instanceof NoSuchFileException) {
            return "no such folder";
        }
        if (root instanceof CharacterCodingException) {
            return "it is not UTF-8";
        }
        String message = root.getMessage();
        return message == null ? root.getClass().getSimpleName() : message;
    }
}
