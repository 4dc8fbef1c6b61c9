package org.duskline.web.page;

/** A form that did not come from a page of ours, or from one that lay open for too long. */
final class FormRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;
}
