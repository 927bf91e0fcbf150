# The program's image, built from this repository alone: docker compose build
FROM maven:3.9-eclipse-temurin-17 AS build
WORKDIR /source
COPY pom.xml .
COPY src src
COPY sample-scans sample-scans
RUN --mount=type=cache,target=/maven mvn --batch-mode -Dmaven.repo.local=/maven -Dmaven.test.skip=true package

FROM eclipse-temurin:17-jre
RUN apt-get update \
    && apt-get install --yes --no-install-recommends curl \
    && rm -rf /var/lib/apt/lists/* \
    && useradd --system --uid 10001 --create-home wallplate \
    && mkdir /scans && chown wallplate /scans
COPY --from=build /source/target/wallplate.jar /opt/wallplate.jar
USER wallplate
WORKDIR /home/wallplate
# Half of the container's memory for Java's heap: pictures are also held outside of it. The parallel collector, because a page's large
# arrays have the usual one mark through the heap again and again, which took a quarter of a worker's processor time.
ENV JAVA_TOOL_OPTIONS="-XX:+UseParallelGC -XX:MaxRAMPercentage=50 -XX:+ExitOnOutOfMemoryError -Djava.awt.headless=true"
EXPOSE 8080 8081
ENTRYPOINT ["java", "-jar", "/opt/wallplate.jar"]
