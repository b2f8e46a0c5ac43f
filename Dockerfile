# The base is an argument, so that a mirror or a hardened Python 3.11 can take its place.
ARG BASE_IMAGE=docker.io/library/python:3.11-slim
# A release names the base by its digest too (sha256:...): a tag moves, and the same sources would make another image.
ARG BASE_DIGEST=

FROM ${BASE_IMAGE}${BASE_DIGEST:+@$BASE_DIGEST} AS build
# The installer stays in this stage: the image that runs can install nothing.
RUN python -m venv --without-pip /venv
COPY requirements.lock /build/
RUN python -m pip --python /venv/bin/python install --no-cache-dir --disable-pip-version-check \
    --only-binary :all: --require-hashes -r /build/requirements.lock
COPY service /app/service
# Compiled ahead: the user below may write nothing, and a start without compiling is quicker.
RUN /venv/bin/python -m compileall -q --invalidation-mode unchecked-hash /app/service

FROM ${BASE_IMAGE}${BASE_DIGEST:+@$BASE_DIGEST}
ARG BASE_IMAGE
ARG BASE_DIGEST
LABEL org.opencontainers.image.title="fitment-service" \
      org.opencontainers.image.base.name="${BASE_IMAGE}" \
      org.opencontainers.image.base.digest="${BASE_DIGEST}" \
      org.opencontainers.image.licenses="Apache-2.0"
# Every address: inside a container the loopback one reaches nobody.
# One thread for linear algebra: the service does none that would fill more, idle ones only cost memory.
ENV PATH=/venv/bin:$PATH \
    PYTHONDONTWRITEBYTECODE=1 \
    PYTHONUNBUFFERED=1 \
    OPENBLAS_NUM_THREADS=1 \
    FITMENT_HOST=0.0.0.0 \
    PORT=8000
COPY --from=build /venv /venv
COPY --from=build /app /app
COPY LICENSE /app/LICENSE
WORKDIR /app
# By number, so that an orchestrator can see that it is not root.
USER 10001:10001
EXPOSE 8000
HEALTHCHECK --interval=10s --timeout=3s --start-period=10s --retries=3 \
    CMD ["/venv/bin/python", "-c", "import os, urllib.request; urllib.request.urlopen(f'http://127.0.0.1:{os.environ[\"PORT\"]}/health/ready', timeout=2)"]
ENTRYPOINT ["/venv/bin/python", "-m", "service"]
CMD ["serve"]
